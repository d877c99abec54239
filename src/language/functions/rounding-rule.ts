import { MARGIN, roundingMargin } from '../../units/index.ts';
import type { LoweringTools } from './entry.ts';

/** The nearest whole number where the quotient is one to within the margin, else undefined. */
function whole(q: number): number | undefined {
  const near = Math.round(q);
  return Math.abs(q - near) <= roundingMargin(q) ? near + 0 : undefined;
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
  return (whole(q) ?? Math.sign(q) * Math.floor(Math.abs(q) + 0.5 + roundingMargin(q))) * step;
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

/** A quotient as formulas: its cell, its size cut to a whole number, the nearest, and whether that counts as it. */
function lowerQuotient(q: string, tools: LoweringTools) {
  const quotient = tools.helper(q);
  const size = `ABS(${quotient})`;
  const half = tools.constant(0.5);
  const { least, part, most, noise, mostNoise } = MARGIN;
  const [of, atMost] = [(x: number) => `${tools.constant(x)}*${size}`, tools.constant(most)];
  const agreed = `MIN(MAX(${tools.constant(least)},${of(part)}),${atMost})`;
  const wide = `MAX(${agreed},MIN(${of(noise)},${tools.constant(mostNoise)}))`;
  const near = `INT(${size}+${half})`;
  return {
    cut: `INT(${size})`,
    near,
    halfUp: `INT(${size}+${half}+${wide})`,
    isWhole: `ABS(${size}-${near})<=${wide}`,
    isNegative: `${quotient}<${tools.constant(0)}`,
    sign: `SIGN(${quotient})`,
  };
}

/**
 * The rounded quotient as an A1 formula, by the same rule. Only sizes are cut to whole numbers, since INT goes down in
 * some spreadsheets and towards zero in others.
 */
export function lowerRounded(
  kind: 'floor' | 'ceiling' | 'trunc' | 'away' | 'nearest',
  q: string,
  tools: LoweringTools,
): string {
  const { cut, near, halfUp, isWhole, isNegative, sign } = lowerQuotient(q, tools);
  const down = `IF(${isWhole},${near},${cut})`;
  const up = `IF(${isWhole},${near},${cut}+${tools.constant(1)})`;
  switch (kind) {
    case 'floor':
      return `IF(${isNegative},-${up},${down})`;
    case 'ceiling':
      return `IF(${isNegative},-${down},${up})`;
    case 'trunc':
      return `(${sign}*${down})`;
    case 'away':
      return `(${sign}*${up})`;
    case 'nearest':
      return `(${sign}*IF(${isWhole},${near},${halfUp}))`;
  }
}

/** What is left after whole steps, by the same rule. */
export function lowerRemainder(x: string, step: string, tools: LoweringTools): string {
  const { cut, isWhole, isNegative } = lowerQuotient(`${x}/${step}`, tools);
  const steps = `IF(${isNegative},-${cut}-${tools.constant(1)},${cut})`;
  return `IF(${isWhole},${tools.constant(0)},${x}-${steps}*${step})`;
}
