import { type Capacity, capacityAt, type Site } from './capacity.ts';
import { endOf, same } from './ground.ts';
import { type Maybe, sumOf, withAll } from './inputs.ts';
import { type Combination, holdAgainst } from './loads.ts';

/** One depth of the table. */
export interface Depth {
  readonly capacity: Capacity;
  /** The depth from which a base in its layer counts in full: some diameters into a sand (API RP 2GEO 8.1). */
  readonly counts: number;
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

/** A ratio of what counts to what a rule gives; one where the rule gives nothing. */
export function ratioOf(counts: Maybe, byRule: Maybe): Maybe {
  return byRule === 0 ? 1 : withAll([counts, byRule], (one, other) => one / other);
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
    const shaft = carried(capacity.shaft, product(ratios.shaft, ratios.whole));
    const base = carried(capacity.base, product(ratios.base, ratios.whole));
    const friction = carried(capacity.uplift, ratios.uplift);
    const { weight, lightWeight, plugWeight } = capacity;
    const hung = withAll(
      [capacity.above, design.added],
      (above, added) => above + added + site.inputs.number('pile.Q_f'),
    );
    const resists = { shaft, base, uplift: friction, weight, lightWeight, plugWeight };
    // The drag at a depth is no less than at the design tip; what it is more does not hold a pile down.
    const compression = least(
      counting.map((one) => holdAgainst({ ...one, head: withDrag(one, hung) }, resists).toSpare),
    );
    const uplift = least(counting.map((one) => holdAgainst(one, resists).toSpareInUplift));
    const whole = sumOf([shaft, base]);
    const layer = capacity.of === undefined ? undefined : site.bearings[capacity.of]?.layer;
    const into = (site.inputs.number('pile.n_emb') * site.inputs.number('pile.D')) / 1000;
    return {
      capacity,
      counts: layer && !layer.isClay ? layer.top + into : 0,
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

function withDrag({ withoutDrag, dragging, drag }: Combination, above: Maybe): Maybe {
  return withAll([drag, above], (design, here) => withoutDrag + dragging * Math.max(design, here));
}

function product(one: Maybe, other: Maybe): Maybe {
  return withAll([one, other], (a, b) => a * b);
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
  /** How many depths from the first on, down to the design tip, do not meet it. */
  readonly failing: Maybe;
}

/**
 * Reads the table. Between two depths of one layer the least to spare is taken as a straight line; where the layer changes
 * between them the base jumps, and the depth of the table stands.
 */
export function neededLength(depths: readonly Depth[], embedded: number): Needed | undefined {
  if (depths.length === 0 || depths.some(({ least: spare }) => spare === null)) return undefined;
  const meets = ({ least: spare, counts, capacity }: Depth): boolean =>
    Number(spare) >= 0 && capacity.depth >= counts;
  const at = depths.findIndex(meets);
  const meeting = depths.filter(meets).length;
  const found = depths[at];
  if (!found) return { meeting, first: null, betweenDepths: null, failing: null };
  const above = depths[at - 1];
  const { depth } = found.capacity;
  const straight =
    above && Number(above.least) < 0 && above.capacity.of === found.capacity.of
      ? depth -
        ((depth - above.capacity.depth) * Number(found.least)) / (Number(found.least) - Number(above.least))
      : depth;
  // Of all depths that count the least is given.
  const deep = Math.max(found.counts, straight);
  const later = depths
    .slice(at)
    .filter(({ least: spare, capacity }) => capacity.depth <= embedded + same && Number(spare) < 0);
  return { meeting, first: depth, betweenDepths: deep, failing: later.length };
}
