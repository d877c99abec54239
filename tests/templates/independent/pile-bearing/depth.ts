import { type Capacity, capacityAt, type Site } from './capacity.ts';
import { endOf, same } from './ground.ts';
import { type Maybe, sumOf, withAll } from './inputs.ts';
import { type Combination, holdAgainst } from './loads.ts';

/** One depth of the table. */
export interface Depth {
  readonly capacity: Capacity;
  /** What it gives in the ratios found at the design tip. */
  readonly shaft: Maybe;
  readonly base: Maybe;
  readonly whole: Maybe;
  readonly friction: Maybe;
  /** Least to spare over the combinations that count, in compression, in uplift, and of both. */
  readonly compression: Maybe;
  readonly uplift: Maybe;
  readonly least: Maybe;
}

/** What the rules give at the design tip, and the ratios of what is stated there to it. */
export interface Found {
  readonly design: Capacity;
  readonly ratios: {
    readonly shaft: Maybe;
    readonly base: Maybe;
    readonly whole: Maybe;
    readonly uplift: Maybe;
  };
}

/** A ratio of what counts to what a rule gives; one where both are the same or the rule gives nothing. */
export function ratioOf(counts: Maybe, byRule: Maybe): Maybe {
  return withAll([counts, byRule], (one, other) => (one === other ? 1 : other === 0 ? null : one / other));
}

/** The first depth of the table, so that the design tip is one of its depths. */
export function firstDepth(embedded: number, step: number): number {
  return embedded - step * (Math.ceil(embedded / step - same) - 1);
}

/** Capacity against demand from the first depth, by the step, to the end of the layers. */
export function profileOf(
  site: Site,
  { design, ratios }: Found,
  counting: readonly Combination[],
): readonly Depth[] {
  const embedded = design.depth;
  const step = site.inputs.number('depth.dz_p');
  const first = firstDepth(embedded, step);
  const count = Math.floor((endOf(site.bearings.map(({ layer }) => layer)) - first) / step + same) + 1;
  return Array.from({ length: Math.max(0, count) }, (_, index) => {
    const depth = first + index * step;
    const isTip = Math.abs(depth - embedded) < same;
    const capacity = capacityAt(site, depth, isTip ? { of: design.of } : {});
    // Less than the rules give is carried to all depths, more only to those in the layer of the tip.
    const carried = (value: Maybe, ratio: Maybe): Maybe =>
      withAll([value, ratio], (one, by) => one * (by <= 1 || capacity.of === design.of ? by : 1));
    const shaft = carried(capacity.shaft, ratios.shaft);
    const base = carried(capacity.base, ratios.base);
    const friction = carried(capacity.uplift, ratios.uplift);
    const { weight, plugWeight } = capacity;
    const carriedWhole = (part: Maybe): Maybe => carried(part, ratios.whole);
    const held = counting.map((one) =>
      holdAgainst(one, {
        shaft: carriedWhole(shaft),
        base: carriedWhole(base),
        uplift: friction,
        weight,
        plugWeight,
      }),
    );
    const compression = least(held.map(({ resistance, compression: demand }) => margin(resistance, demand)));
    const uplift = least(held.map(({ upliftResistance, tension }) => margin(upliftResistance, tension)));
    const whole = carriedWhole(sumOf([shaft, base]));
    return {
      capacity,
      shaft,
      base,
      whole,
      friction,
      compression,
      uplift,
      least: least([compression, uplift]),
    };
  });
}

function margin(resistance: Maybe, demand: Maybe): Maybe {
  return withAll([resistance, demand], (most, asked) => most - asked);
}

function least(values: readonly Maybe[]): Maybe {
  return values.some((value) => value === null) || values.length === 0
    ? null
    : Math.min(...values.map(Number));
}

/** The length that the demand needs. */
export interface Needed {
  /** How many depths meet the demand. */
  readonly meeting: number;
  /** The first of them, and that between it and the depth above. */
  readonly first: Maybe;
  readonly betweenDepths: Maybe;
  /** How many depths there are from the first on. */
  readonly fromThere: Maybe;
}

/**
 * Reads the table. Between two depths of one layer the least to spare is taken as a straight line; where the layer changes
 * between them the base jumps, and the depth of the table stands.
 */
export function neededLength(depths: readonly Depth[]): Needed | undefined {
  if (depths.length === 0 || depths.some(({ least: spare }) => spare === null)) return undefined;
  const at = depths.findIndex(({ least: spare }) => Number(spare) >= 0);
  const meeting = depths.filter(({ least: spare }) => Number(spare) >= 0).length;
  const found = depths[at];
  if (!found) return { meeting, first: null, betweenDepths: null, fromThere: null };
  const above = depths[at - 1];
  const { depth } = found.capacity;
  const straight =
    above && above.capacity.of === found.capacity.of
      ? depth -
        ((depth - above.capacity.depth) * Number(found.least)) / (Number(found.least) - Number(above.least))
      : depth;
  return { meeting, first: depth, betweenDepths: straight, fromThere: depths.length - at };
}
