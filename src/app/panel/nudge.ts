import { writeDecimals } from '../../units/index.ts';

/**
 * An entry one step larger or smaller: the step is one of the last digit that was written (13.4 ft goes by 0.1), or of
 * the last that is not zero in a whole number (96 000 t goes by 1000) if that is at most a tenth of it
 * (20 t goes by 1). Undefined for an entry that is not one number.
 */
export function nudgedEntry(entry: string, steps: number): string | undefined {
  const match = /^(\s*)([-−+]?\d[\d,\u202f\u00a0 ]*(?:\.\d+)?)(.*)$/.exec(entry);
  if (!match) return undefined;
  const [, space = '', written = '', unit = ''] = match;
  if (/^['"/]|^\s*\d|^[eE]/.test(unit)) return undefined;
  const digits = written.replace(/[^\d.−-]/g, '').replace('−', '-');
  const decimals = digits.split('.')[1]?.length ?? 0;
  const zeros = decimals === 0 ? (/[1-9](0+)$/.exec(digits)?.[1]?.length ?? 0) : 0;
  const tenth = Math.max(digits.replace('-', '').length - 2, 0);
  const step = 10 ** (Math.min(zeros, tenth) - decimals);
  const next = Number(digits) + steps * step;
  const text = writeDecimals(next, decimals);
  const tail = /[\s,\u202f\u00a0]$/.test(written) ? ' ' : '';
  return `${space}${text}${tail}${unit}`;
}
