import type { Verdict } from '../program.ts';
import { groupOf } from './block.ts';
import type { Capacity, Site } from './capacity.ts';
import { endOf, same, strengthAt } from './ground.ts';
import { type Maybe, numberIn, withAll } from './inputs.ts';
import { check, lines, type Names } from './names.ts';
import { type Bearing, partsBetween } from './shaft.ts';
import { between, ksf, soilClasses } from './tables.ts';

const idle: Verdict = { verdict: 'does not apply' };

/** The angle of a sand by which its limits are found: five degrees over δ of its class, else its own. */
export function angleOf({ layer, rules }: Bearing): Maybe {
  if (layer.isClay) return 0;
  const ofClass = soilClasses[rules.key];
  return ofClass ? ofClass.delta + 5 : numberIn(layer.row, 'φ');
}

/** API RP 2A-WSD Table 6.4.3-1 over δ + 5°: very loose, loose, medium, dense, very dense. */
const limits = {
  friction: [1, 1.4, 1.7, 2, 2.4],
  base: [40, 60, 100, 200, 250],
} as const;

/** A value over angles of 20, 25, 30, 35 and 40 degrees, held beyond. */
export function overAngle(values: readonly number[], angle: Maybe): Maybe {
  if (angle === null) return null;
  const at = Math.min(40, Math.max(20, angle));
  const points = values.map((value, index) => [20 + 5 * index, value] as const);
  return between(points, at);
}

/** The most that a ground gives, kPa: a sand by its angle, a clay by the densest sand. */
function mostOf(bearing: Bearing, of: keyof typeof limits): Maybe {
  const values = limits[of];
  const most = bearing.layer.isClay ? Math.max(...values) : overAngle(values, angleOf(bearing));
  return withAll([most], (one) => ksf * one);
}

const byStress = ['beta', 'beta stated', 'K tan delta'];

/** The most friction at a depth: of clay whose friction does not follow stress, its strength where that is entered. */
function mostFriction(bearing: Bearing, depth: number): Maybe {
  const ground = mostOf(bearing, 'friction');
  if (!bearing.layer.isClay || byStress.includes(bearing.rules.rule)) return ground;
  return withAll([strengthAt(bearing.layer, depth)], (strength) => (strength > 0 ? strength : ground));
}

/** A pound, kN: what acts inside is told from the lesser of plug and friction where it is more than that apart. */
const pound = 0.0044482216152605;

/** Where all the inside friction hangs on the pile, rounding is left of it. */
function rounded(force: Maybe): Maybe {
  return withAll([force], (one) => (Math.abs(one) < 1e-6 ? 0 : one));
}

/** What ground gives at most, how thick slices are, and how far below the tip the ground is known. */
export function mostLines(site: Site, { depth, of, unit, within, plug, inside }: Capacity): Names {
  const { inputs, bearings, slices, section } = site;
  const parts = partsBetween(inputs, slices, inputs.number('pile.z_ign'), depth);
  const shares = parts.map(({ of: index, depth: at }): Maybe => {
    const bearing = bearings[index];
    if (!bearing) return null;
    return withAll([bearing.friction(at), mostFriction(bearing, at)], (friction, most) => friction / most);
  });
  const greatest = shares.some((share) => share === null) ? null : Math.max(0, ...shares.map(Number));
  const own = of === undefined ? undefined : bearings[of];
  const mostBase = own ? mostOf(own, 'base') : null;
  const ignored = inputs.number('pile.z_ign');
  const thick = slices
    .filter(({ top, bottom }) => bottom <= depth + same && bottom - Math.max(top, ignored) > 0)
    .map(({ top, bottom }) => bottom - top);
  const thickest = Math.max(0, ...thick);
  const { short } = groupOf(inputs);
  const size = inputs.number('pile.D') / 1000;
  const diameters = inputs.number('pile.n_bor') * size;
  const wanted = Math.max(diameters, 2 * short);
  const known = Math.max(0, endOf(bearings.map(({ layer }) => layer)) - depth);
  const drag = Math.min(depth, inputs.number('pile.z_n'));
  const hung = section.isOpen
    ? partsBetween(inputs, slices, ignored, drag).map(({ of: index, depth: at, length }) =>
        withAll(
          [bearings[index]?.friction(at) ?? null],
          (friction) => friction * length * section.insidePerimeter,
        ),
      )
    : [];
  const resisting = withAll(
    [inside, ...hung],
    (all, ...lost) => all - lost.reduce((sum, one) => sum + one, 0),
  );
  const lesser = withAll([resisting, plug], (friction, base) => Math.min(friction, base));
  const isLesser = withAll([within, lesser], (a, b) => (Math.abs(a - b) <= pound ? 1 : 0));
  const plugged: Verdict = isLesser === 0 ? check(rounded(within), rounded(lesser)) : idle;
  return {
    ...lines('pile', { r_x: greatest, q_xt: mostBase, d_x: thickest, H_b: wanted, H_k: known }),
    'pile.c_fx': check(greatest, 1),
    'pile.c_qx': check(unit, mostBase),
    'pile.c_dz': check(thickest, 1),
    'pile.c_bor': check(wanted, known),
    'pile.c_plg': section.isOpen ? (isLesser === null ? { verdict: 'refused' } : plugged) : idle,
    'pile.layers.φ_k': bearings.map(angleOf),
    'pile.layers.f_x': bearings.map((bearing) => mostOf(bearing, 'friction')),
    'pile.layers.q_x': bearings.map((bearing) => mostOf(bearing, 'base')),
  };
}
