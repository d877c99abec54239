// Tables of the sources: the coefficients of the tanker guidelines, the propeller areas, ropes and nominal bollard loads.

/** A table of numbers by rising key. */
export type Curve = readonly (readonly [key: number, value: number])[];

const angles = [0, 10, 20, 40, 60, 80, 100, 120, 140, 160, 170, 180];
const byAngle = (values: readonly number[]): Curve =>
  angles.map((angle, row) => [angle, values[row] ?? Number.NaN]);

/** OCIMF Mooring Equipment Guidelines, 2nd ed. (1997), Fig. 2.3 to 2.5 as digitised: wind, by angle from the stern. */
export const windCurves = {
  CX_l: byAngle([0.74, 0.75, 0.74, 0.55, 0.275, 0.15, -0.07, -0.325, -0.62, -0.82, -0.9, -0.945]),
  CX_b: byAngle([0.61, 0.63, 0.62, 0.475, 0.27, 0.1, -0.04, -0.125, -0.325, -0.6, -0.73, -0.865]),
  CA_l: byAngle([0, 0.15, 0.285, 0.44, 0.49, 0.475, 0.43, 0.375, 0.275, 0.12, 0.05, 0]),
  CA_b: byAngle([0, 0.14, 0.285, 0.44, 0.59, 0.525, 0.48, 0.3755, 0.25, 0.11, 0.05, 0]),
  CF_l: byAngle([0, 0.015, 0.05, 0.1, 0.172, 0.225, 0.267, 0.24, 0.175, 0.075, 0.025, 0]),
  CF_b: byAngle([0, 0.01, 0.03, 0.125, 0.2525, 0.375, 0.47, 0.486, 0.375, 0.225, 0.125, 0]),
} as const;

/** The same, Fig. 2.6 to 2.8: current, depth over draught 1.1, conventional bow. */
export const currentCurves = {
  CX_l: byAngle([0.036, 0, -0.01, 0.08, 0.09, 0.04, -0.05, -0.11, -0.06, 0.07, 0, -0.035]),
  CX_b: byAngle([0.055, 0.0575, 0.06, 0.053, 0.02, 0.0085, 0.005, -0.005, -0.04, -0.0475, -0.0425, -0.038]),
  CA_l: byAngle([0, 0.46, 0.9, 1.1, 1.41, 1.57, 1.35, 0.93, 0.5, 0.35, 0.175, 0]),
  CF_l: byAngle([0, 0.105, 0.23, 0.45, 0.88, 1.26, 1.415, 1.325, 1.05, 0.94, 0.43, 0]),
} as const;

/** UFC 4-159-03 (2005), Table 4-7: waterline rectangle over propeller plane area. */
export const areaRatios: Readonly<Record<string, number>> = {
  destroyer: 100,
  cruiser: 160,
  carrier: 125,
  cargo: 240,
  tanker: 270,
  submarine: 125,
};

/** What a kind of ship is taken to have at least and at most. */
export interface ShipKind {
  /** Block coefficient, from and to. */
  readonly finest: number;
  readonly fullest: number;
  /** Least coefficient of wind abeam on the side area. */
  readonly wind: number;
  /** Whether the coefficients for tankers are for it. */
  readonly isAsTanker: boolean;
  /** Least side area of what stands on deck, cargo and superstructure, over length times breadth. */
  readonly onDeck: number;
}

const kind = (
  finest: number,
  fullest: number,
  wind: number,
  { isAsTanker = false, onDeck = 0 } = {},
): ShipKind => ({ finest, fullest, wind, isAsTanker, onDeck });

/** Kinds of ship: block coefficients with room for ballast, wind coefficients after Blendermann; common practice. */
export const shipKinds: Readonly<Record<string, ShipKind>> = {
  tanker: kind(0.62, 0.9, 0.65, { isAsTanker: true, onDeck: 0.03 }),
  'bulk carrier': kind(0.62, 0.9, 0.7, { isAsTanker: true, onDeck: 0.03 }),
  'gas carrier': kind(0.55, 0.82, 0.7, { onDeck: 0.06 }),
  'general cargo': kind(0.55, 0.88, 0.85, { onDeck: 0.05 }),
  container: kind(0.5, 0.8, 0.85, { onDeck: 0.17 }),
  'ro-ro': kind(0.45, 0.82, 0.85, { onDeck: 0.1 }),
  passenger: kind(0.45, 0.78, 0.85, { onDeck: 0.2 }),
  naval: kind(0.35, 0.7, 0.8, { onDeck: 0.03 }),
  submarine: kind(0.4, 0.85, 0.5),
  barge: kind(0.65, 1, 0.85),
  'work boat': kind(0.35, 0.8, 0.85, { onDeck: 0.05 }),
  fishing: kind(0.35, 0.75, 0.85, { onDeck: 0.05 }),
  yacht: kind(0.2, 0.65, 0.8, { onDeck: 0.03 }),
};

/** What is known of a kind of rope. */
export interface Rope {
  /** Break strength over diameter squared, kN/mm². */
  readonly strength: number;
  /** Axial stiffness over dry break strength. */
  readonly stiffness: number;
  /** Break strength kept when wet. */
  readonly wet: number;
  /** Working limit over break strength. */
  readonly limit: number;
}

/** Kinds of rope: secant stiffness at half the break strength; nylon by UFC 4-159-03 (2005), Table 6-8. */
export const ropes: Readonly<Record<string, Rope>> = {
  wire: { strength: 0.63, stiffness: 0.5 / 0.008, wet: 1, limit: 0.55 },
  HMPE: { strength: 0.62, stiffness: 0.5 / 0.0125, wet: 1, limit: 0.5 },
  aramid: { strength: 0.6, stiffness: 0.5 / 0.01, wet: 1, limit: 0.5 },
  polyester: { strength: 0.24, stiffness: 0.5 / 0.055, wet: 1, limit: 0.5 },
  mixed: { strength: 0.24, stiffness: 0.5 / 0.075, wet: 1, limit: 0.5 },
  nylon: { strength: 0.265, stiffness: 3.54, wet: 0.85, limit: 0.5 },
};

/** Nominal loads of one class of displacement: kN, but tf for BS and IS; spacing in m and kN/m along the front. */
export interface NominalLoad {
  readonly upTo: number;
  readonly older: number;
  readonly later: number;
  readonly british: number;
  readonly indian: number;
  readonly thoresen: number;
  readonly spacing: number;
  readonly square: number;
  readonly parallel: number;
}

const nominalRows: readonly (readonly number[])[] = [
  [2000, 100, 100, 10, 10, 100, 10, 15, 10],
  [5000, 300, 300, 30, 30, 200, 15, 15, 10],
  [10_000, 300, 300, 30, 30, 300, 20, 20, 15],
  [20_000, 600, 600, 60, 60, 500, 20, 25, 20],
  [30_000, 800, 800, 80, 80, 600, 25, 30, 20],
  [50_000, 800, 800, 80, 80, 800, 25, 35, 20],
  [100_000, 1000, 1000, 100, 100, 1000, 30, 40, 25],
  [200_000, 1500, 2000, 150, 150, 1500, 30, 50, 30],
  [Number.POSITIVE_INFINITY, 2000, 2500, 200, 200, 2000, 35, 65, 40],
];

/** EAU R 12 (1990s; 2004 and 2012), BS 6349-4, IS 4651-3 and Thoresen, by displacement in t; from memory. */
export const nominalLoads: readonly NominalLoad[] = nominalRows.map(
  ([upTo, older, later, british, indian, thoresen, spacing, square, parallel]) => ({
    upTo: upTo ?? Number.NaN,
    older: older ?? Number.NaN,
    later: later ?? Number.NaN,
    british: british ?? Number.NaN,
    indian: indian ?? Number.NaN,
    thoresen: thoresen ?? Number.NaN,
    spacing: spacing ?? Number.NaN,
    square: square ?? Number.NaN,
    parallel: parallel ?? Number.NaN,
  }),
);

/** OCDI by gross tonnage, from memory: up to, mooring post kN, bollard kN. */
export const tonnageLoads: readonly {
  readonly upTo: number;
  readonly post: number;
  readonly bollard: number;
}[] = [
  { upTo: 500, post: 150, bollard: 150 },
  { upTo: 1000, post: 250, bollard: 250 },
  { upTo: 2000, post: 350, bollard: 250 },
  { upTo: 3000, post: 350, bollard: 350 },
  { upTo: 5000, post: 500, bollard: 350 },
  { upTo: 10_000, post: 700, bollard: 500 },
  { upTo: 20_000, post: 1000, bollard: 700 },
  { upTo: 50_000, post: 1500, bollard: 1000 },
  { upTo: 100_000, post: 2000, bollard: 1000 },
];

/** Common ratings of bollards, tf. */
export const ratings = [10, 15, 20, 30, 50, 75, 80, 100, 125, 150, 200, 250, 300] as const;

/** Reads a curve straight between its points; no number beyond its ends. */
export function readCurve(curve: Curve, at: number): number {
  const exact = curve.find(([key]) => key === at);
  if (exact) return exact[1];
  const next = curve.findIndex(([key]) => key > at);
  const [above, below] = [curve[next], curve[next - 1]];
  if (!above || !below) return Number.NaN;
  return below[1] + ((above[1] - below[1]) * (at - below[0])) / (above[0] - below[0]);
}
