import { type Inputs, type Maybe, numberIn, type Row, sumOf, textIn, withAll } from './inputs.ts';
import { type Quake, still } from './liquefaction.ts';
import { resistanceFactors, safeties } from './tables.ts';

/** Loads on the head of one pile, kN. */
export interface Loads {
  readonly dead: number;
  readonly live: number;
  readonly crane: number;
  readonly storm: number;
  readonly uplift: number;
  readonly quake: number;
}

/** Each pile takes the rail over its spacing, and the deck over its width. */
export function loadsOf({ number, stated }: Inputs): Loads {
  const spacing = number('loads.s_p');
  const width = number('loads.b_d');
  return {
    dead: stated('loads.N_D') ?? spacing * (width * number('loads.w_d') + number('loads.w_b')),
    live: stated('loads.N_L') ?? spacing * width * number('loads.q_l'),
    crane: stated('loads.N_C') ?? spacing * number('loads.w_c') * number('loads.m_c'),
    storm: stated('loads.N_S') ?? spacing * number('loads.w_s'),
    uplift: stated('loads.N_U') ?? spacing * number('loads.u_s'),
    quake: number('loads.N_E'),
  };
}

/** Factors of the format and the conditions. */
export interface Factors {
  /** Of the table, in compression and in uplift. */
  readonly printed: readonly [number, number];
  readonly safety: readonly number[];
  readonly upliftSafety: readonly number[];
  readonly resistance: number;
  readonly upliftResistance: number;
}

/** USACE EM 1110-2-2906 and AASHTO LRFD. */
export function factorsOf({ text, stated }: Inputs): Factors {
  const { compression, uplift } = safeties[text('loads.verified')] ?? { compression: [], uplift: [] };
  const [resistance, upliftResistance] = resistanceFactors[text('loads.φ_by')] ?? [Number.NaN, Number.NaN];
  return {
    printed: [resistance, upliftResistance],
    safety: compression.map((factor, index) => stated(`loads.F_${index + 1}`) ?? factor),
    upliftSafety: uplift.map((factor, index) => stated(`loads.U_${index + 1}`) ?? factor),
    resistance: stated('loads.φ_c') ?? resistance,
    upliftResistance: stated('loads.φ_t') ?? upliftResistance,
  };
}

/** What friction is divided by in uplift, in a usual condition. */
export function upliftFactor(inputs: Inputs, factors: Factors): number {
  return inputs.text('loads.basis') === 'LRFD'
    ? 1 / factors.upliftResistance
    : (factors.upliftSafety[0] ?? Number.NaN);
}

/** What of the friction in uplift may hold a pile that floats with nothing on it. */
export function heldByFriction(inputs: Inputs, factors: Factors, friction: Maybe): Maybe {
  return withAll([friction], (all) => all / upliftFactor(inputs, factors));
}

const conditions = ['usual', 'unusual', 'extreme'];

/** One combination: demands that do not hang on the capacity, and its factors. */
export interface Combination {
  readonly name: string;
  readonly counts: boolean;
  readonly head: Maybe;
  readonly withoutDrag: number;
  /** Of that the dead load. */
  readonly permanent: number;
  /** The factors on the weight of the pile, and on its lift where it floats. */
  readonly weighing: number;
  readonly floating: number;
  readonly dragging: number;
  /** What an earthquake takes of the ground, in the combinations that take it. */
  readonly quake: Quake;
  readonly shakes: number;
  readonly drag: Maybe;
  readonly onShaft: { readonly asd: number; readonly lrfd: number; readonly used: number };
  readonly onBase: number;
  readonly inUplift: { readonly asd: number; readonly lrfd: number; readonly used: number };
}

/** The combinations as drawn, with a drag load. */
export function combinationsOf(
  inputs: Inputs,
  loads: Loads,
  factors: Factors,
  drag: Maybe,
  quake: Quake = still,
): readonly Combination[] {
  const basis = inputs.text('loads.basis');
  // Rows that do not count keep to the table.
  const [resistance, upliftResistance] =
    basis === 'LRFD' ? [factors.resistance, factors.upliftResistance] : factors.printed;
  return inputs.combos.map((row) => {
    const factor = (column: string): number => numberIn(row, column) ?? Number.NaN;
    const design = textIn(row, 'design');
    const condition = conditions.indexOf(textIn(row, 'cond') ?? '');
    const isExtreme = condition === 2;
    const loaded =
      factor('f_D') * loads.dead +
      factor('f_L') * loads.live +
      factor('f_C') * loads.crane +
      factor('f_S') * loads.storm -
      factor('f_U') * loads.uplift +
      factor('f_E') * loads.quake;
    const of = (asd: number | undefined, lrfd: number): Combination['onShaft'] => ({
      asd: asd ?? Number.NaN,
      lrfd: 1 / lrfd,
      used: design === 'ASD' ? (asd ?? Number.NaN) : 1 / lrfd,
    });
    const onShaft = of(factors.safety[condition], isExtreme ? inputs.number('loads.φ_x') : resistance);
    return {
      name: textIn(row, 'combo') ?? '',
      counts: design === basis,
      head: withAll([drag], (force) => loaded + factor('f_N') * force),
      withoutDrag: loaded,
      permanent: factor('f_D') * loads.dead,
      weighing: inputs.text('loads.W_is') === 'counted' ? factor('f_D') : 0,
      floating: Math.max(1, factor('f_D')),
      dragging: factor('f_N'),
      drag,
      quake,
      shakes: factor('f_E') === 0 ? 0 : 1,
      onShaft,
      onBase: statedBase(row) ?? onShaft.used,
      inUplift: of(
        factors.upliftSafety[condition],
        isExtreme ? inputs.number('loads.φ_xt') : upliftResistance,
      ),
    };
  });
}

function statedBase(row: Row): Maybe {
  return numberIn(row, 'F_b');
}

/** A combination held against a pile. */
export interface Held {
  readonly of: Combination;
  readonly weight: Maybe;
  readonly compression: Maybe;
  readonly tension: Maybe;
  readonly resistance: Maybe;
  readonly resistingWeight: Maybe;
  /** What a pile that displaces more water than it weighs pulls up by. */
  readonly lift: Maybe;
  readonly upliftResistance: Maybe;
  readonly withoutDrag: Maybe;
  /** What the demand asks of ultimate resistance: demand, in uplift less the weight, times the factor required. */
  readonly asked: Maybe;
  readonly askedInUplift: Maybe;
  readonly used: Maybe;
  readonly usedInUplift: Maybe;
  /** Resistance less demand, both with their signs. */
  readonly toSpare: Maybe;
  readonly toSpareInUplift: Maybe;
}

/** What a pile gives, for combinations. */
export interface Resists {
  readonly shaft: Maybe;
  readonly base: Maybe;
  readonly uplift: Maybe;
  readonly weight: Maybe;
  readonly lightWeight: Maybe;
  readonly plugWeight: Maybe;
}

/** Demand against resistance in compression and in uplift, NAVFAC DM 7.02 for the weight in uplift. */
export function holdAgainst(
  of: Combination,
  { shaft, base, uplift, weight, lightWeight, plugWeight }: Resists,
): Held {
  // What floats relieves nothing.
  const factored = withAll([weight], (whole) => of.weighing * Math.max(0, whole));
  // A combination that does not count asks for nothing.
  const asked = (demand: number): number => (of.counts ? Math.max(0, demand) : 0);
  const hung = withAll([of.quake.hanging], (all) => of.shakes * all);
  const lost = withAll(
    [of.quake.shaftLost, of.quake.baseLost],
    (along, under) => of.shakes * (along / of.onShaft.used + under / of.onBase),
  );
  const compression = withAll([of.head, factored, hung], (head, own, more) => asked(head + own + more));
  const withoutDrag = withAll([of.head, factored, hung], (_, own, more) =>
    asked(of.withoutDrag + own + more),
  );
  const resistance = withAll([shaft, base, lost], (along, under, gone) =>
    Math.max(0, along / of.onShaft.used + under / of.onBase - gone),
  );
  const sinks = sumOf([lightWeight, plugWeight]);
  const resistingWeight = withAll([sinks], (own) => of.weighing * Math.max(0, own));
  // What displaces more water than it weighs does not resist: it lifts, in full.
  const lift = withAll([sinks], (own) => (own < 0 ? of.floating * -own : 0));
  const tension = withAll([of.head, lift], (head, up) => asked(up - head));
  const upliftResistance = withAll([uplift, resistingWeight], (friction, own) =>
    Math.max(0, friction / of.inUplift.used + own),
  );
  return {
    of,
    weight: factored,
    compression,
    tension,
    resistance,
    resistingWeight,
    lift,
    upliftResistance,
    asked: withAll([compression, shaft, base, compression === 0 ? 0 : lost], (force, along, under, gone) => {
      const whole = force + gone;
      return along + under === 0
        ? whole * of.onShaft.used
        : (whole * (along + under)) / (along / of.onShaft.used + under / of.onBase);
    }),
    askedInUplift: withAll(
      [tension, resistingWeight],
      (force, own) => of.inUplift.used * Math.max(0, force - own),
    ),
    used: share(compression, resistance),
    withoutDrag,
    usedInUplift: share(tension, upliftResistance),
    toSpare: withAll(
      [shaft, base, of.head, factored, hung, lost],
      (along, under, head, own, more, gone) =>
        along / of.onShaft.used + under / of.onBase - head - own - more - gone,
    ),
    toSpareInUplift: withAll(
      [uplift, resistingWeight, lift, of.head],
      (friction, own, up, head) => friction / of.inUplift.used + own - up + head,
    ),
  };
}

/** Demand over resistance; nothing where nothing is asked; it stands at 1,000 where there is no resistance, and goes no higher. */
function share(demand: Maybe, resistance: Maybe): Maybe {
  return demand === 0
    ? 0
    : withAll([demand, resistance], (asked, most) => asked / Math.max(most, asked / 1000));
}

/** The first of those that give most; undefined where one has no value or there are none. */
export function greatest(held: readonly Held[], of: (one: Held) => Maybe): Held | undefined {
  let most: Held | undefined;
  for (const one of held) {
    const value = of(one);
    if (value === null) return undefined;
    if (!most || value > Number(of(most))) most = one;
  }
  return most;
}
