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
/** Halves away from zero, with the same margin. */
export const nearestTo = (x: number, step: number): number => {
  const q = x / step;
  const size = Math.abs(q);
  return Math.sign(q) * Math.floor(size + 0.5 + margin(q)) * step;
};

/** The quotient and whether it counts as whole, as helper cells: `[q, nearest, isWhole]`. */
function quotientCells(q: string, tools: LoweringTools): readonly [string, string, string] {
  const quotient = tools.helper(q);
  const near = tools.helper(`INT(${quotient}+${tools.constant(0.5)})`);
  const wide = `MAX(${tools.constant(1e-9)},${tools.constant(1e-12)}*ABS(${quotient}))`;
  return [quotient, near, `ABS(${quotient}-${near})<=${wide}`];
}

/** The rounded quotient as an A1 formula, by the same rule. */
export function lowerRounded(
  kind: 'floor' | 'ceiling' | 'trunc' | 'away' | 'nearest',
  q: string,
  tools: LoweringTools,
): string {
  const [quotient, near, isWhole] = quotientCells(q, tools);
  const up = `(-INT(-${quotient}))`;
  const down = `INT(${quotient})`;
  const negative = `${quotient}<${tools.constant(0)}`;
  switch (kind) {
    case 'floor':
      return `IF(${isWhole},${near},${down})`;
    case 'ceiling':
      return `IF(${isWhole},${near},${up})`;
    case 'trunc':
      return `IF(${isWhole},${near},IF(${negative},${up},${down}))`;
    case 'away':
      return `IF(${isWhole},${near},IF(${negative},${down},${up}))`;
    case 'nearest': {
      const wide = `MAX(${tools.constant(1e-9)},${tools.constant(1e-12)}*ABS(${quotient}))`;
      return `(SIGN(${quotient})*INT(ABS(${quotient})+${tools.constant(0.5)}+${wide}))`;
    }
  }
}
