import {
  effectiveStress,
  followedStress,
  headAt,
  keptSurcharge,
  type Lengths,
  layerAt,
  strengthAt,
} from './ground.ts';
import { type Inputs, type Maybe, withAll } from './inputs.ts';
import type { Section } from './section.ts';
import { type Bearing, frictionBetween, type Slice } from './shaft.ts';
import { addedDrag } from './surcharge.ts';

/** What a pile gives whose tip is at a depth: m, kPa, kN. */
export interface Capacity {
  readonly depth: number;
  /** Which layer the tip bears on, counted from none. */
  readonly of: number | undefined;
  readonly stress: Maybe;
  readonly followed: Maybe;
  readonly strength: Maybe;
  readonly unit: Maybe;
  readonly outside: Maybe;
  readonly inside: Maybe;
  readonly byLayer: readonly Maybe[];
  /** Of the outside friction, that above the depth of drag. */
  readonly above: Maybe;
  /** What a surcharge that may be taken away adds to it, while it lies there. */
  readonly added: Maybe;
  /** Both, and the drag of ground that the layers leave out. */
  readonly drag: Maybe;
  readonly ring: Maybe;
  readonly plug: Maybe;
  /** Of the inside friction, that below the depth of drag. */
  readonly freeInside: Maybe;
  /** What acts inside: friction or plug. */
  readonly within: Maybe;
  readonly shaft: Maybe;
  readonly base: Maybe;
  readonly uplift: Maybe;
  /** The weight in air with what fills the pile, at low water, and the lesser one at high water. */
  readonly dryWeight: Maybe;
  readonly weight: Maybe;
  readonly lightWeight: Maybe;
  readonly plugWeight: Maybe;
}

/** The parts that do not change with depth. */
export interface Site {
  readonly inputs: Inputs;
  readonly section: Section;
  readonly lengths: Lengths;
  readonly bearings: readonly Bearing[];
  readonly slices: readonly Slice[];
  readonly held: { readonly depth: number; readonly stress: Maybe };
}

/** What is stated of a tip in place of what the rules give: its layer, the strength there, the unit resistance. */
export interface Tip {
  readonly of?: number | undefined;
  readonly strength?: number | undefined;
  readonly unit?: number | undefined;
}

/**
 * API RP 2A-WSD 6.4.1 for plugged and unplugged pipes; friction above the depth of drag loads the pile and does not carry it
 * (AASHTO LRFD 10.7.3.7), outside or inside.
 */
export function capacityAt(site: Site, depth: number, tip: Tip = {}): Capacity {
  const { inputs, section, lengths, bearings, slices, held } = site;
  const of =
    tip.of ??
    layerAt(
      bearings.map(({ layer }) => layer),
      depth,
    );
  const bearing = of === undefined ? undefined : bearings[of];
  const { water, low, free } = lengths;
  const dry = dryWeight(site, depth);
  const weightIn = (level: Maybe, head: Maybe): Maybe =>
    withAll(
      [dry, section.displacing, wetLength(free, level, depth), head],
      (own, area, wet, more) => own - area * inputs.number('pile.γ_w') * (wet + more),
    );
  // Water under pressure lifts the tip; in compression that help is left out.
  const head = headAt(
    bearings.map(({ layer }) => layer),
    water,
    depth,
  );
  const from = inputs.number('pile.z_ign');
  const drag = Math.min(depth, inputs.number('pile.z_n'));
  const whole = frictionBetween(inputs, section, bearings, slices, [from, depth]);
  const dragging = frictionBetween(inputs, section, bearings, slices, [from, drag]);
  const added = addedDrag(inputs, bearings, slices, { from, to: drag, water });
  const stress = bearing ? effectiveStress(bearing.layer, depth, water) : null;
  const strength = tip.strength ?? (bearing ? strengthAt(bearing.layer, depth) : null);
  const unit = tip.unit ?? (bearing ? bearing.base(depth, strength) : null);
  const ring = withAll([unit, section.ring], (pressure, area) => pressure * area);
  const plug = withAll([unit], (pressure) => pressure * section.plug);
  const resistingInside = withAll([whole.inside, dragging.inside], (all, lost) => all - lost);
  const within = insideBy(inputs.text('pile.plug_rule'), resistingInside, plug);
  const group = inputs.number('pile.η_g');
  const isPlugCounted = section.isOpen && inputs.text('pile.plug_up') === 'counted';
  // Of ground whose water is not known, or that boils, nothing is said, whether a plug is in it or not.
  const isDoubtful = water === null || (stress !== null && stress < 0);
  const idleWeight = isDoubtful && inputs.text('pile.plug_up') === 'counted' ? null : 0;
  return {
    depth,
    of,
    stress,
    followed: bearing ? followedStress(bearing.layer, depth, water, held) : null,
    strength,
    unit,
    outside: bearing ? whole.outside : null,
    inside: bearing ? whole.inside : null,
    byLayer: whole.byLayer,
    above: dragging.outside,
    added,
    drag: withAll([dragging.outside, added], (hung, more) => hung + more + inputs.number('pile.Q_f')),
    ring,
    plug,
    freeInside: resistingInside,
    within,
    shaft: bearing ? withAll([whole.outside, dragging.outside], (all, lost) => group * (all - lost)) : null,
    base: withAll([ring, within], (under, inner) => group * (under + inner)),
    uplift: bearing ? withAll([whole.uplift], (all) => inputs.number('pile.η_t') * all) : null,
    dryWeight: dry,
    weight: weightIn(low, 0),
    lightWeight: weightIn(water, head),
    plugWeight: isPlugCounted
      ? withAll([stress, whole.inside], (one, held) =>
          // What friction does not hold stays in the ground.
          Math.min(held, (one - keptSurcharge(inputs)) * section.plug),
        )
      : idleWeight,
  };
}

/** The weight in air of a pile with its tip at a depth, and of what fills it up to the cut-off at most. */
function dryWeight({ inputs, section, lengths: { free } }: Site, depth: number): Maybe {
  return withAll([section.weight, free], (perLength, up) => {
    const whole = up + depth;
    return perLength * whole + section.fill * Math.min(whole, inputs.number('pile.h_B'));
  });
}

/** What resists inside an open pipe by the rule chosen. */
export function insideBy(rule: string, friction: Maybe, plug: Maybe): Maybe {
  if (rule === 'plugged') return plug;
  if (rule === 'coring') return friction;
  return withAll([friction, plug], (one, other) => Math.min(one, other));
}

/** The length of a pile, with its tip at a depth and so much of it free, that stands below water. */
export function wetLength(free: Maybe, water: Maybe, depth: number): Maybe {
  return withAll([water, free], (level, up) => Math.min(up + depth, Math.max(0, depth - level)));
}
