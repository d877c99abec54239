import { effectiveStress, followedStress, type Layer, same, strengthAt } from './ground.ts';
import { type Inputs, type Maybe, numberIn, sumOf, textIn, withAll } from './inputs.ts';
import type { Section } from './section.ts';
import { adhesion, bearingByAngle, between, ksf, psf, soilClasses, terzaghi } from './tables.ts';

/** The rules and factors of a layer. */
export interface Rules {
  readonly rule: string;
  /** Clay, or the class of a sand. */
  readonly key: string;
  /** Where the factors come from: clay, class, or the material of the pile. */
  readonly from: string;
  readonly limitOfClass: string;
  readonly pressure: Maybe;
  readonly deltaBy: string;
  readonly delta: Maybe;
  readonly betaBy: string;
  readonly beta: Maybe;
  readonly frictionLimit: string;
  readonly baseRule: string;
  readonly bearing: Maybe;
  readonly baseLimit: string;
  readonly perimeter: Maybe;
}

/** The bearing factor of an angle: none below the table, no more than at its end above. */
function bearingAt(angle: number): Maybe {
  const [first = 0, last = 0] = [bearingByAngle[0]?.[0], bearingByAngle.at(-1)?.[0]];
  return angle < first ? 0 : between(bearingByAngle, Math.min(angle, last));
}

const stressRules = ['beta', 'beta stated', 'K tan delta'];

/** The rules of a layer: those of the choices, unless a cell of the layer states another. */
function rulesOf(inputs: Inputs, section: Section, { row, isClay }: Layer): Rules {
  const stated = (column: string): Maybe => numberIn(row, column);
  // Sand that an earthquake turns to liquid gives neither friction nor base.
  const gives = isClay || textIn(row, 'lq') !== 'liquefies';
  const rule =
    textIn(row, 'rule') ?? (gives ? inputs.text(isClay ? 'pile.clay_rule' : 'pile.sand_rule') : 'liquefied');
  const material = inputs.text('pile.material');
  const key = isClay ? 'clay' : (textIn(row, 'class') ?? 'none');
  const from = key === 'clay' ? 'clay' : key === 'none' ? material : 'class';
  const limitOfClass = from === 'class' ? 'class' : 'none';
  const ofClass = soilClasses[key];
  const deltaBy = rule === 'K tan delta' ? from : 'none';
  const angle = stated('φ');
  const deltas: Readonly<Record<string, Maybe>> = {
    clay: angle,
    class: ofClass?.delta ?? null,
    steel: 20,
    concrete: withAll([angle], (degrees) => 0.75 * degrees),
  };
  // At rest: 1 - sin φ, raised by the square root of overconsolidation; of clay K tan φ is that of the remoulded soil.
  const isAtRest = rule === 'K tan delta' && (isClay || inputs.text('pile.K_is') === 'at rest');
  const atRest = withAll(
    [angle],
    (degrees) => (1 - Math.sin((degrees * Math.PI) / 180)) * Math.sqrt(stated('OCR') ?? 1),
  );
  const pressure = stated('K') ?? (isAtRest ? atRest : section.displacesLittle ? 0.8 : 1);
  const delta = stated('δ') ?? (deltaBy in deltas ? (deltas[deltaBy] ?? null) : 0);
  const raise = section.displacesLittle ? 1 : 1.25;
  const betas: Readonly<Record<string, readonly [string, Maybe]>> = {
    beta: isClay
      ? ['clay', stated('β_in')]
      : ofClass?.beta === undefined
        ? ['no β: state “K tan delta” or “f stated” as its rule', null]
        : ['sand', raise * ofClass.beta],
    'beta stated': ['entered', stated('β_in')],
    'K tan delta': [
      'K tan δ',
      withAll([pressure, delta], (k, degrees) => k * Math.tan((degrees * Math.PI) / 180)),
    ],
  };
  const [betaBy, beta] = betas[rule] ?? ['none', 0];
  const baseRule =
    textIn(row, 'rule_q') ??
    (!gives ? 'liquefied' : from === 'clay' ? 'N_c s_u' : from === 'class' ? 'N_q of class' : 'N_q of angle');
  const bearings: Readonly<Record<string, Maybe>> = {
    'N_q of class': ofClass?.bearing ?? null,
    'N_q of angle': angle === null ? null : bearingAt(angle),
  };
  return {
    rule,
    key,
    from,
    limitOfClass,
    pressure,
    deltaBy,
    delta,
    betaBy,
    beta,
    frictionLimit: textIn(row, 'lim_f') ?? (stressRules.includes(rule) ? limitOfClass : 'none'),
    baseRule,
    bearing: stated('N_q') ?? (baseRule in bearings ? (bearings[baseRule] ?? null) : 0),
    baseLimit: textIn(row, 'lim_q') ?? (baseRule === 'N_q of class' ? limitOfClass : 'none'),
    perimeter: stated('p_l') ?? section.perimeter,
  };
}

/** Shaft adhesion over undrained strength, none where the rule does not reach: strengths in kPa. */
function alphaOf(rule: string, strength: number, stress: number, entered: Maybe): Maybe {
  switch (rule) {
    case 'API': {
      // API RP 2GEO 8.1.3: 0.5 ψ^-0.5 to ψ = 1 and 0.5 ψ^-0.25 above, at most 1.
      const ratio = strength / stress;
      return Math.min(1, 0.5 * ratio ** (ratio <= 1 ? -0.5 : -0.25));
    }
    case 'USACE':
      return Math.min(1, Math.max(0.5, 1 - (strength / psf - 500) / 2000));
    case 'linear 25-70':
      return strength <= 25 ? 1 : strength <= 70 ? 1 - (strength - 25) / 90 : 0.5;
    case 'Terzaghi':
      return between(terzaghi, strength / 100);
    case 'NAVFAC steel':
    case 'NAVFAC concrete':
      return withAll(
        [between(adhesion[rule === 'NAVFAC steel' ? 'steel' : 'concrete'], strength / psf)],
        (adhered) => (adhered * psf) / strength,
      );
    case 'alpha stated':
      return entered;
    default:
      throw new Error(`there is no α in the rule ${rule}`);
  }
}

/** A layer with its rules, and what friction and base follow in it. */
export interface Bearing {
  readonly layer: Layer;
  readonly rules: Rules;
  /** Unit friction at a depth, kPa. */
  readonly friction: (depth: number) => Maybe;
  /** The ratio of friction in uplift to that in compression. */
  readonly uplift: number;
  /** Unit base resistance at a depth with a strength there, kPa. */
  readonly base: (depth: number, strength?: Maybe) => Maybe;
}

/** What a layer gives at a depth. */
export function bearingOf(
  inputs: Inputs,
  section: Section,
  layer: Layer,
  water: Maybe,
  held: { readonly depth: number; readonly stress: Maybe },
): Bearing {
  const rules = rulesOf(inputs, section, layer);
  const { row } = layer;
  const ofClass = soilClasses[rules.key];
  const limits: Readonly<Record<string, readonly [friction: Maybe, base: Maybe]>> = {
    class: [withAll([ofClass?.friction ?? null], inKsf), withAll([ofClass?.end ?? null], inKsf)],
    stated: [numberIn(row, 'f_l_in'), numberIn(row, 'q_l_in')],
  };
  const limited = (value: Maybe, limit: string, which: 0 | 1): Maybe =>
    limit === 'none'
      ? value
      : withAll([value, limits[limit]?.[which] ?? null], (one, most) => Math.min(one, most));
  const unlimited = (depth: number): Maybe => {
    if (rules.rule === 'liquefied') return 0;
    if (rules.rule === 'f stated') return numberIn(row, 'f_in');
    if (stressRules.includes(rules.rule)) {
      return withAll(
        [rules.beta, followedStress(layer, depth, water, held)],
        (beta, stress) => beta * stress,
      );
    }
    return withAll([strengthAt(layer, depth), effectiveStress(layer, depth, water)], (strength, stress) =>
      strength === 0
        ? rules.rule === 'alpha stated'
          ? withAll([numberIn(row, 'α_in')], () => 0)
          : 0
        : withAll(
            [alphaOf(rules.rule, strength, stress, numberIn(row, 'α_in'))],
            (alpha) => alpha * strength,
          ),
    );
  };
  const unlimitedBase = (depth: number, strength: Maybe): Maybe => {
    if (rules.baseRule === 'liquefied') return 0;
    if (rules.baseRule === 'q stated') return numberIn(row, 'q_in');
    if (rules.baseRule === 'N_c s_u') {
      return withAll([strength], (one) => inputs.number('pile.N_c') * one);
    }
    return withAll(
      [rules.bearing, followedStress(layer, depth, water, held)],
      (factor, stress) => factor * stress,
    );
  };
  const found = new Map<number, Maybe>();
  return {
    layer,
    rules,
    friction: (depth) => {
      const known = found.get(depth);
      if (known !== undefined) return known;
      const friction = limited(unlimited(depth), rules.frictionLimit, 0);
      found.set(depth, friction);
      return friction;
    },
    uplift: inputs.number(layer.isClay ? 'pile.r_clay' : 'pile.r_sand'),
    base: (depth, strength = strengthAt(layer, depth)) =>
      limited(unlimitedBase(depth, strength), rules.baseLimit, 1),
  };
}

function inKsf(value: number): number {
  return value * ksf;
}

/** A slice of a layer; where friction is the mean of top and bottom, it is two halves. */
export interface Slice {
  readonly of: number;
  readonly top: number;
  readonly bottom: number;
  readonly half: 'first' | 'second' | undefined;
}

/** Slices of layers that end at the depth of drag and at the tip, none thicker than asked for. */
export function slicesOf(inputs: Inputs, layers: readonly Layer[], embedded: number): readonly Slice[] {
  const thickest = inputs.number('pile.dz');
  const isHalved = inputs.text('pile.f_depth') === 'ends';
  return layers.flatMap(({ top, bottom }, of) => {
    const within = (depth: number): number => Math.min(Math.max(depth, top), bottom);
    const [first = top, last = top] = [within(embedded), within(inputs.number('pile.z_n'))].toSorted(
      (a, b) => a - b,
    );
    return [[top, first] as const, [first, last] as const, [last, bottom] as const].flatMap(([from, to]) => {
      if (to - from <= same) return [];
      const count = Math.ceil((to - from) / thickest - same) * (isHalved ? 2 : 1);
      return Array.from({ length: count }, (_, index) => ({
        of,
        top: from + ((to - from) * index) / count,
        bottom: index + 1 === count ? to : from + ((to - from) * (index + 1)) / count,
        half: isHalved ? (index % 2 === 0 ? ('first' as const) : ('second' as const)) : undefined,
      }));
    });
  });
}

/** The parts of slices that lie between two depths, each with the depth where its friction is taken. */
export function partsBetween(
  inputs: Inputs,
  slices: readonly Slice[],
  from: number,
  to: number,
): readonly { readonly of: number; readonly depth: number; readonly length: number }[] {
  const where = inputs.text('pile.f_depth');
  return slices.flatMap(({ of, top, bottom, half }) => {
    const [first, last] = [Math.max(top, from), Math.min(bottom, to)];
    if (last - first <= 0) return [];
    const depth =
      where === 'top' || half === 'first'
        ? first
        : where === 'base' || half === 'second'
          ? last
          : (first + last) / 2;
    return [{ of, depth, length: last - first }];
  });
}

/** Σ f p Δz between two depths: outside, in uplift, and by a layer; inside by the perimeter inside. */
export function frictionBetween(
  inputs: Inputs,
  section: Section,
  bearings: readonly Bearing[],
  slices: readonly Slice[],
  [from, to]: readonly [number, number],
): {
  readonly outside: Maybe;
  readonly uplift: Maybe;
  readonly inside: Maybe;
  readonly byLayer: readonly Maybe[];
} {
  const parts = partsBetween(inputs, slices, from, to).flatMap(({ of, depth, length }) => {
    const bearing = bearings[of];
    return bearing ? [{ of, bearing, length, unit: bearing.friction(depth) }] : [];
  });
  const outside = parts.map(({ of, bearing, length, unit }) => ({
    of,
    ratio: bearing.uplift,
    force: withAll([unit, bearing.rules.perimeter], (friction, perimeter) => friction * perimeter * length),
  }));
  return {
    outside: sumOf(outside.map(({ force }) => force)),
    uplift: sumOf(outside.map(({ force, ratio }) => withAll([force], (one) => one * ratio))),
    // Of friction that is not known nothing is said, whether there is a bore or not.
    inside: sumOf(
      parts.map(({ unit, length }) => withAll([unit], (one) => one * section.insidePerimeter * length)),
    ),
    byLayer: bearings.map((_, index) =>
      sumOf(outside.filter(({ of }) => of === index).map(({ force }) => force)),
    ),
  };
}
