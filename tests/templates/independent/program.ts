/**
 * What a program for the work of one template says of itself. It is written from the cited standards, not from the book:
 * it imports nothing of `src` and reads nothing of `templates`; names of lines, tables and options are all they share.
 */
export interface IndependentProgram {
  readonly template: string;
  /** The unit of every number that is drawn or worked out, by name; a number without one is a plain number. */
  readonly units: Readonly<Record<string, UnitName>>;
  /** Draws one set of inputs over the whole permitted range, with every method and the awkward corners. */
  readonly draw: (random: Random) => Drawn;
  /** Works out what the template states; what is left out is not compared. */
  readonly work: (drawn: Drawn) => Worked;
  /**
   * Results that cannot agree to one part in a million, with the relative difference allowed (at most 0.5 %) and why: an
   * iteration that ends early, a printed table of few digits.
   */
  readonly loose?: Readonly<Record<string, { readonly relative: number; readonly reason: string }>>;
}

/** A cell: a number in the unit of its name, a text or an option; null is left blank. */
export type Cell = number | string | null;

/** Inputs: given lines and choices as `sheet.name`, tables as `sheet.table` with all their rows, cell by cell by column. */
export interface Drawn {
  readonly lines: Readonly<Record<string, Cell>>;
  readonly tables: Readonly<Record<string, readonly Readonly<Record<string, Cell>>[]>>;
}

/**
 * Results: lines as `sheet.name`, checks as `sheet.name` with a verdict, columns as `sheet.table.column` with a list of
 * cells. Null says that there is no value and the template must refuse to give one.
 */
export type Worked = Readonly<Record<string, Cell | Verdict | readonly Cell[]>>;

/** How a check stands, and demand over capacity where both are above zero. */
export interface Verdict {
  readonly verdict: 'holds' | 'fails' | 'does not apply' | 'refused';
  readonly utilisation?: number;
}

/** Numbers drawn from a seed. */
export interface Random {
  /** Between the two, anywhere. */
  readonly between: (least: number, most: number) => number;
  /** Between the two, evenly over the powers of ten; both above zero. */
  readonly over: (least: number, most: number) => number;
  /** A whole number from the first to the last. */
  readonly whole: (first: number, last: number) => number;
  /** One of a list. */
  readonly of: <T>(list: readonly T[]) => T;
  /** True that often: 0.1 is one time of ten. */
  readonly chance: (part: number) => boolean;
}

/**
 * Units that inputs are drawn and results are given in. The harness writes an input in this unit or in its fellow of the
 * other system; money, states of volume and plain numbers have none.
 */
export type UnitName = keyof typeof fellows;

/** Each unit as the book's language writes it, with a unit of the other system and how many of that make one. */
export const fellows = {
  '-': undefined,
  '%': undefined,
  deg: undefined,
  m: ['ft', 1 / 0.3048],
  mm: ['in', 1 / 25.4],
  'm²': ['sf', 1 / 0.3048 ** 2],
  'mm²': ['in²', 1 / 25.4 ** 2],
  'm³': ['cy', 1 / 0.9144 ** 3],
  'mm³': ['in³', 1 / 25.4 ** 3],
  'mm⁴': ['in⁴', 1 / 25.4 ** 4],
  kW: ['hp', 1 / 0.7456998715822702],
  kN: ['kip', 1 / 4.4482216152605],
  'kN/m': ['klf', 0.3048 / 4.4482216152605],
  kN·m: ['kip*ft', 1 / (4.4482216152605 * 0.3048)],
  kPa: ['psf', 0.3048 ** 2 / 0.0044482216152605],
  MPa: ['ksi', 0.0254 ** 2 / 0.0044482216152605],
  'kN/m³': ['pcf', 0.3048 ** 3 / 0.0044482216152605],
  'kg/m³': ['lbm/cy', 0.9144 ** 3 / 0.45359237],
  t: ['ST', 1 / 0.90718474],
  kg: ['lbm', 1 / 0.45359237],
  'm/s': ['ft/s', 1 / 0.3048],
  'm/s²': ['ft/s²', 1 / 0.3048],
  'm CD': ['ft CD', 1 / 0.3048],
  'km/h': ['mph', 1 / 1.609344],
  kn: undefined,
  rad: undefined,
  tf: ['STf', 9.80665 / (2 * 4.4482216152605)],
  'm²/s': ['ft^2/s', 1 / 0.3048 ** 2],
  'kg/m': ['lbm/ft', 0.3048 / 0.45359237],
  'L/min': undefined,
  s: undefined,
  min: undefined,
  h: undefined,
  d: undefined,
  yr: undefined,
  bcy: undefined,
  lcy: undefined,
  ccy: undefined,
  'lcy/bcy': undefined,
  'bcy/ccy': undefined,
  USD: undefined,
  'USD/h': undefined,
  'USD/t': ['USD/ST', 0.90718474],
  'USD/d': undefined,
  km: ['mi', 1 / 1.609344],
  'm³/h': ['cy/h', 1 / 0.9144 ** 3],
  'm²/h': ['sy/h', 1 / 0.9144 ** 2],
  'h/m³': ['h/cy', 0.9144 ** 3],
  't/h': ['ST/h', 1 / 0.90718474],
  L: ['gal', 1 / 3.785411784],
  'L/m²': ['gal/sy', 0.9144 ** 2 / 3.785411784],
  'mm/h': ['in/h', 1 / 25.4],
  '1/h': undefined,
  'min/h': undefined,
  'USD/m²': ['USD/sf', 0.3048 ** 2],
  'USD/L': ['USD/gal', 3.785411784],
  'USD/m³': ['USD/cy', 0.9144 ** 3],
  bcm: ['bcy', 1 / 0.9144 ** 3],
  lcm: ['lcy', 1 / 0.9144 ** 3],
  ccm: ['ccy', 1 / 0.9144 ** 3],
  'lcm/bcm': ['lcy/bcy', 1],
  'bcm/lcm': ['bcy/lcy', 1],
  'ccm/bcm': ['ccy/bcy', 1],
  'kg/bcm': ['lbm/bcy', 0.9144 ** 3 / 0.45359237],
  'kg/lcm': ['lbm/lcy', 0.9144 ** 3 / 0.45359237],
  'kg/ccm': ['lbm/ccy', 0.9144 ** 3 / 0.45359237],
  'lcm/h': ['lcy/h', 1 / 0.9144 ** 3],
  'bcm/h': ['bcy/h', 1 / 0.9144 ** 3],
  'ccm/h': ['ccy/h', 1 / 0.9144 ** 3],
  'USD/lcm': ['USD/lcy', 0.9144 ** 3],
  'USD/bcm': ['USD/bcy', 0.9144 ** 3],
  shift: undefined,
  wd: undefined,
  'h/shift': undefined,
  'shift/wd': undefined,
  'h/wd': undefined,
  '1/wd': undefined,
  'USD/wd': undefined,
  'L/wd': ['gal/wd', 1 / 3.785411784],
} as const satisfies Readonly<Record<string, readonly [string, number] | undefined>>;
