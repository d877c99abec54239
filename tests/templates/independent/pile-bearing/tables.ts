import type { Maybe } from './inputs.ts';

/** A pound on a square foot in kPa, a ksf, an inch and a foot in m. */
export const psf = 0.0044482216152605 / 0.3048 ** 2;
export const ksf = 1000 * psf;

/** Design parameters of a kind of siliceous soil. */
interface SoilClass {
  /** Friction angle of soil on pile, degrees. */
  readonly delta: number;
  /** Limits of friction and of end bearing, ksf. */
  readonly friction: number;
  readonly end: number;
  readonly bearing: number;
  /** Only of the kinds that API RP 2GEO (2011) Table 1 keeps. */
  readonly beta?: number;
}

const [lowest, low] = [
  { delta: 15, friction: 1, bearing: 8, end: 40 },
  { delta: 20, friction: 1.4, bearing: 12, end: 60 },
];
const [middle, high, highest] = [
  { delta: 25, friction: 1.7, bearing: 20, end: 100, beta: 0.37 },
  { delta: 30, friction: 2, bearing: 40, end: 200, beta: 0.46 },
  { delta: 35, friction: 2.4, bearing: 50, end: 250, beta: 0.56 },
];

/** API RP 2A-WSD 21st ed. Table 6.4.3-1, with β of API RP 2GEO (2011) Table 1. */
export const soilClasses: Readonly<Record<string, SoilClass>> = {
  'very loose sand': lowest,
  'loose sand-silt': lowest,
  'medium silt': lowest,
  'loose sand': low,
  'medium sand-silt': { ...low, beta: 0.29 },
  'dense silt': low,
  'medium sand': middle,
  'dense sand-silt': middle,
  'dense sand': high,
  'very dense sand-silt': high,
  'very dense sand': highest,
  'dense gravel': { delta: 35, friction: 2.4, bearing: 50, end: 250 },
};

type Points = readonly (readonly [at: number, value: number])[];

/** α over s_u/(100 kPa): Terzaghi, Peck and Mesri (1996), as tabled by Das. */
export const terzaghi: Points = [
  [0, 1],
  [0.1, 1],
  [0.2, 0.92],
  [0.3, 0.82],
  [0.4, 0.74],
  [0.6, 0.62],
  [0.8, 0.54],
  [1, 0.48],
  [1.2, 0.42],
  [1.4, 0.4],
  [1.6, 0.38],
  [1.8, 0.36],
  [2, 0.35],
  [2.4, 0.34],
  [2.8, 0.34],
];

/** Adhesion over undrained strength, psf: NAVFAC DM 7.02, p. 7.2-196. */
export const adhesion: Readonly<Record<'concrete' | 'steel', Points>> = {
  concrete: [
    [0, 0],
    [250, 250],
    [500, 480],
    [1000, 750],
    [2000, 950],
    [4000, 1300],
  ],
  steel: [
    [0, 0],
    [250, 250],
    [500, 460],
    [1000, 700],
    [2000, 720],
    [4000, 750],
  ],
};

/** N_q of driven piles over the friction angle: NAVFAC DM 7.02. */
export const bearingByAngle: Points = [
  [26, 10],
  [28, 15],
  [30, 21],
  [31, 24],
  [32, 29],
  [33, 35],
  [34, 42],
  [35, 50],
  [36, 62],
  [37, 77],
  [38, 86],
  [39, 120],
  [40, 145],
];

/** λ over the embedded length in m: Vijayvergiya and Focht (1972), as tabled by Das. */
export const lambda: Points = [
  [0, 0.5],
  [5, 0.336],
  [10, 0.245],
  [15, 0.2],
  [20, 0.173],
  [25, 0.15],
  [30, 0.136],
  [35, 0.132],
  [40, 0.127],
  [50, 0.118],
  [60, 0.113],
  [70, 0.11],
  [80, 0.11],
  [90, 0.11],
];

/** Loss in mm of a face over years: EN 1993-5:2007 Tables 4-1 and 4-2. */
export const corrosion: Readonly<Record<string, Points>> = {
  soil: losses(0, 0.3, 0.6, 0.9, 1.2),
  'fresh water': losses(0.15, 0.55, 0.9, 1.15, 1.4),
  'sea, immersed': losses(0.25, 0.9, 1.75, 2.6, 3.5),
  'sea, low water and splash': losses(0.55, 1.9, 3.75, 5.6, 7.5),
};

function losses(...[five, twentyFive, fifty, seventyFive, hundred]: readonly number[]): Points {
  return [
    [0, 0],
    [5, five ?? 0],
    [25, twentyFive ?? 0],
    [50, fifty ?? 0],
    [75, seventyFive ?? 0],
    [100, hundred ?? 0],
  ];
}

/** Factors of safety, usual, unusual and extreme: USACE EM 1110-2-2906 (1991) 4-2c. */
export const safeties: Readonly<
  Record<string, { readonly compression: readonly number[]; readonly uplift: readonly number[] }>
> = {
  'load test': { compression: [2, 1.5, 1.15], uplift: [2, 1.5, 1.15] },
  'dynamic test': { compression: [2.5, 1.9, 1.4], uplift: [3, 2.25, 1.7] },
  'no test': { compression: [3, 2.25, 1.7], uplift: [3, 2.25, 1.7] },
};

/** Resistance factors in compression and uplift: AASHTO LRFD Table 10.5.5.2.3-1, FHWA-NHI-16-009 Tables 7-1 to 7-3. */
export const resistanceFactors: Readonly<Record<string, readonly [number, number]>> = {
  'static test and dynamic': [0.8, 0.6],
  'static test': [0.75, 0.6],
  'dynamic, all piles': [0.75, 0.5],
  'dynamic, 2 % of piles': [0.65, 0.5],
  'static: alpha': [0.35, 0.25],
  'static: beta': [0.25, 0.2],
  'static: lambda': [0.4, 0.3],
};

/** On the straight lines between points; none beyond the first and the last. */
export function between(points: Points, at: number): Maybe {
  for (const [index, [right, above]] of points.entries()) {
    if (at > right) continue;
    const previous = points[index - 1];
    if (at === right || !previous) return at === right ? above : null;
    const [left, below] = previous;
    return below + ((above - below) * (at - left)) / (right - left);
  }
  return null;
}
