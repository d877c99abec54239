import type { Entries } from './entries.ts';

/** Forces of a flow on the ship: kN and kN·m, forward and off the berth. */
export interface Force {
  readonly along: number;
  readonly off: number;
  readonly moment: number;
}

/** The force of a flow from one direction, deg from the stern. */
export interface Direction {
  readonly angle: number;
  readonly force: Force;
}

/** A direction that is looked at besides the one entered, with the part of the design speed it has. */
export interface OtherDirection {
  readonly angle: number;
  readonly part: number;
}

/** Reads a table of other directions. */
export function otherDirections(entries: Entries, table: string): readonly OtherDirection[] {
  return (entries.rows(table) ?? []).map((row) => ({ angle: row.number('a'), part: row.number('p') }));
}

/** One knot in m/s, the international nautical mile over an hour. */
export const knot = 1852 / 3600;

/** Where a flow comes from: its angle from the stern, and the side. */
export interface Heading {
  /** 0 to 180 deg. */
  readonly reduced: number;
  /** 1 off the berth, -1 onto it, 0 where it runs along the ship. */
  readonly side: number;
  readonly sine: number;
  readonly cosine: number;
}

/** Reads an angle from the stern, in deg; square and end-on flows have no part the other way. */
export function headingOf(angle: number): Heading {
  const reduced = angle > 180 ? 360 - angle : angle;
  const isEnd = reduced === 0 || reduced === 180;
  return {
    reduced,
    side: isEnd ? 0 : angle < 180 ? 1 : -1,
    sine: isEnd ? 0 : sineOf(reduced),
    cosine: reduced === 90 ? 0 : Math.cos((reduced * Math.PI) / 180),
  };
}

/** The sine of an angle in deg. */
export const sineOf = (angle: number): number => Math.sin((angle * Math.PI) / 180);

/** A form of the tanker guidelines: coefficients at the perpendiculars, a pressure in kPa, and the areas, m². */
export interface PerpendicularForm {
  readonly coefficients: { readonly along: number; readonly aft: number; readonly fore: number };
  readonly pressure: number;
  readonly endArea: number;
  readonly sideArea: number;
  readonly between: number;
  readonly side: number;
}

/** OCIMF Mooring Equipment Guidelines, 2nd ed. (1997), App. D: a lateral force at each perpendicular. */
export function forceAtPerpendiculars({
  coefficients: { along, aft, fore },
  pressure,
  endArea,
  sideArea,
  between,
  side,
}: PerpendicularForm): { readonly force: Force; readonly aft: number; readonly fore: number } {
  const atAft = aft * pressure * sideArea * side;
  const atFore = fore * pressure * sideArea * side;
  return {
    aft: atAft,
    fore: atFore,
    force: {
      along: along * pressure * endArea,
      off: atAft + atFore,
      moment: ((atFore - atAft) * between) / 2,
    },
  };
}
