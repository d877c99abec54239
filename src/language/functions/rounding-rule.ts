import type { LoweringTools } from './entry.ts';

/** How near a quotient counts as the whole number beside it. */
function margin(q: number): number {
  return Math.max(1e-9, 1e-12 * Math.abs(q));
}

/** The nearest whole number where the quotient is one to within the margin, else undefined. */
export function whole(q: number): number | undefined {
  const near = Math.round(q);
  return Math.abs(q - near) <= margin(q) ? near + 0 : undefined;
}

export const floorTo = (x: number, step: number): number => (whole(x / step) ?? Math.floor(x / step)) * step;
export const ceilingTo = (x: number, step: number): number => (whole(x / step) ?? Math.ceil(x / step)) * step;
export const truncTo = (x: number, step: number): number => (whole(x / step) ?? Math.trunc(x / step)) * step;
/** Away from zero. */
export const awayTo = (x: number, step: number): number => {
  const q = x / step;
  return (whole(q) ?? Math.sign(q) * Math.ceil(Math.abs(q))) * step;
};
/** Halves away from zero, with the same margin; a whole quotient stays, however wide the margin of a large one is. */
export const nearestTo = (x: number, step: number): number => {
  const q = x / step;
  return (whole(q) ?? Math.sign(q) * Math.floor(Math.abs(q) + 0.5 + margin(q))) * step;
};
/** Rounds to so many decimals. */
export function toDigits(round: (x: number, step: number) => number, x: number, digits: number): number {
  // A power of ten of whole exponent is exact, so dividing by it rounds once only.
  const scale = 10 ** Math.abs(digits);
  return (digits >= 0 ? round(x * scale, 1) / scale : round(x / scale, 1) * scale) + 0;
}
/** What is left of x after whole steps, with the sign of the step; nothing where the quotient counts as whole. */
export const remainderOf = (x: number, step: number): number =>
  whole(x / step) === undefined ? x - Math.floor(x / step) * step : 0;

/**
 * The rounded quotient as an A1 formula, by the same rule. Only sizes are cut to whole numbers, since INT goes down in
 * some spreadsheets and towards zero in others.
 */
export function lowerRounded(
  kind: 'floor' | 'ceiling' | 'trunc' | 'away' | 'nearest',
  q: string,
  tools: LoweringTools,
): string {
  const quotient = tools.helper(q);
  const size = `ABS(${quotient})`;
  const [zero, one, half] = [tools.constant(0), tools.constant(1), tools.constant(0.5)];
  const wide = `MAX(${tools.constant(1e-9)},${tools.constant(1e-12)}*${size})`;
  if (kind === 'nearest') return `(SIGN(${quotient})*INT(${size}+${half}+${wide}))`;
  const near = `INT(${size}+${half})`;
  const isWhole = `ABS(${size}-${near})<=${wide}`;
  const down = `IF(${isWhole},${near},INT(${size}))`;
  const up = `IF(${isWhole},${near},INT(${size})+${one})`;
  switch (kind) {
    case 'floor':
      return `IF(${quotient}<${zero},-${up},${down})`;
    case 'ceiling':
      return `IF(${quotient}<${zero},-${down},${up})`;
    case 'trunc':
      return `(SIGN(${quotient})*${down})`;
    case 'away':
      return `(SIGN(${quotient})*${up})`;
  }
}
