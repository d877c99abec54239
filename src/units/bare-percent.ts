import { type Problem, problem } from '../diagnostics/index.ts';
import { isBareNumber } from './bare-number.ts';
import { fromSI, type Unit } from './unit.ts';

const PER_CENT = 0.01;

/** Whether bare numbers in this unit are per cent. */
export function isPerCent({ dimension, angle, factor }: Unit): boolean {
  return dimension.key === '' && !angle && factor === PER_CENT;
}

/** Whether a number of so many per cent may have been meant as a part of one: 0.10 for 10 %. */
export function mayBeShare(percent: number): boolean {
  return percent !== 0 && Math.abs(percent) <= 1;
}

/** So many parts of one in per cent, as an entry: 0.1 is `10 %`. */
export function shareText(share: number): string {
  return `${Number((share * 100).toPrecision(15))} %`;
}

/**
 * What is pointed out of a number at or below 1 that was typed without a unit where bare numbers are per cent: it is read
 * in the unit beside the field, and may have been meant as a part of one. The remedies write either reading out.
 *
 * @param si what `text` is read as
 * @param unit the unit in which it is read
 */
export function barePercent(text: string, si: number, unit: Unit): Problem | undefined {
  if (!isPerCent(unit) || !isBareNumber(text)) return undefined;
  const percent = Number(fromSI(si, unit).toPrecision(15));
  if (!mayBeShare(percent)) return undefined;
  const written = text.trim();
  const [asRead, asShare] = [`${written} %`, shareText(percent)];
  const span = { from: 0, to: text.length };
  const fixes = [asRead, asShare].map((insert) => ({ label: insert, ...span, insert }));
  return problem('bare-percent', span, { written, asRead, asShare }, fixes);
}
