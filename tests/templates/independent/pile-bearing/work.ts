import type { Cell, Drawn, Worked } from '../program.ts';
import { blockLines, groupLines } from './block.ts';
import { type Capacity, capacityAt, type Site, wetLength } from './capacity.ts';
import { ratioOf } from './depth.ts';
import { corrosionEntered, exposureLines } from './exposure.ts';
import { combinationColumns, governing } from './governing.ts';
import {
  effectiveStress,
  endOf,
  gainOfStrength,
  heldAt,
  type Layer,
  layersOf,
  lengthsOf,
  meanOver,
  same,
  strengthAt,
  strengthAtTop,
  thickness,
  totalStress,
} from './ground.ts';
import { groundLines } from './ground-checks.ts';
import { type Inputs, inputsOf, type Maybe, sumOf, textIn, withAll } from './inputs.ts';
import { liquefactionLines, quakeOf, still } from './liquefaction.ts';
import { combinationsOf, factorsOf, heldByFriction, holdAgainst, loadsOf } from './loads.ts';
import { mostLines } from './most.ts';
import { check, lines, type Names, where } from './names.ts';
import { neutralPlane } from './neutral-plane.ts';
import { depthLines } from './profile.ts';
import { relationsOf, withoutSection } from './relations.ts';
import { type Section, sectionOf } from './section.ts';
import { bearingOf, partsBetween, slicesOf } from './shaft.ts';
import { sidewaysLines } from './sideways.ts';
import { mm, mm2 } from './small-units.ts';
import { structure } from './structure.ts';
import { fillLines } from './surcharge.ts';
import { between, lambda, psf } from './tables.ts';
import { takenLines } from './taken.ts';
import { factorLines, tipLines } from './tip.ts';

/** Works out the book for what was drawn. */
export function workPile(drawn: Drawn): Worked {
  const inputs = inputsOf(drawn);
  const section = sectionOf(inputs);
  const lengths = lengthsOf(inputs);
  const layers = layersOf(inputs, lengths);
  const { embedded } = lengths;
  const worked: Names = { ...lines('pile', lengthLines(lengths)), ...layerColumns(layers) };
  const isHeavy = layers.every(({ unitWeight, water }) => unitWeight - water > 0);
  worked['pile.c_eff'] = { verdict: isHeavy ? 'holds' : 'fails' };
  const isTotal = layers.some(
    ({ row, isClay, unitWeight, top, bottom }) =>
      textIn(row, 'γ_is') === 'effective' &&
      unitWeight > ((isClay ? 76 : 90) * psf) / 0.3048 &&
      bottom > Math.max(top, lengths.water ?? Number.NaN),
  );
  if (lengths.water !== null) worked['pile.c_sub'] = { verdict: isTotal ? 'fails' : 'holds' };
  worked['pile.c_tip'] = check(embedded, endOf(layers));
  Object.assign(
    worked,
    relationsOf(inputs, section, lengths),
    groupLines(inputs),
    exposureLines(inputs, lengths),
    fillLines(inputs, lengths),
    withoutDrag(takenLines(inputs, 0)),
  );
  // A wall thicker than half the pile leaves nothing that the sources speak of.
  if (section.isPipe && section.inside <= 0) return { ...worked, ...withoutSection };
  Object.assign(worked, sectionLines(inputs, section), { 'pile.z_end': endOf(layers) });
  const held = heldAt(inputs, layers, lengths.water);
  const bearings = layers.map((layer) => bearingOf(inputs, section, layer, lengths.water, held));
  Object.assign(worked, ruleColumns(bearings));
  const site: Site = {
    inputs,
    section,
    lengths,
    bearings,
    slices: embedded === null ? [] : slicesOf(inputs, layers, embedded),
    held,
  };
  // Every layer wants what its rule reads, and every clay its strength.
  const lacks =
    partsBetween(inputs, site.slices, inputs.number('pile.z_ign'), endOf(layers)).some(
      ({ of, depth }) => bearings[of]?.friction(depth) === null,
    ) ||
    site.slices.some(({ of, bottom }) => bearings[of]?.friction(bottom) === null) ||
    bearings.some(({ rules }) => rules.perimeter === null) ||
    layers.some(
      (layer) =>
        strengthAtTop(layer) === null || (thickness(layer.row) > 0 && gainOfStrength(layer) === null),
    );
  // A layer lighter than water: its check fails, and what comes of it is not compared.
  if (lacks || !isHeavy) return worked;
  // Of a layer that ends at the mudline rounding leaves a stress there or none, and API takes its fourth root.
  const endsAtZero = layers.some(({ row, logged }) => logged < 0 && Math.abs(logged + thickness(row)) < 1e-9);
  if (endsAtZero && ['top', 'ends'].includes(inputs.text('pile.f_depth'))) return worked;
  // Below the last layer the ground is not known, and there is no base; nor is there without a length.
  if (embedded === null || embedded > endOf(layers) + same) {
    const isKnown = ['q', 'Q_b', 'Q_c'].some((name) => inputs.stated(`pile.${name}`) !== null);
    return {
      ...worked,
      ...(!isKnown && {
        ...lines('pile', { q: null, Q_b: null, Q_c: null }),
        ...(embedded !== null && isPressed(site, embedded) && { 'pile.c_comp': { verdict: 'refused' } }),
      }),
    };
  }
  const layerStated = inputs.stated('pile.k_t');
  const of = layerStated === null ? undefined : layerStated - 1;
  const byRule = embedded === null ? undefined : capacityAt(site, embedded, { of });
  const capacity = byRule && {
    byRule,
    counts: capacityAt(site, byRule.depth, {
      of,
      strength: inputs.stated('pile.s_ut') ?? undefined,
      unit: inputs.stated('pile.q') ?? undefined,
    }),
  };
  return {
    ...worked,
    ...(held.stress !== null && heldLines(inputs, held)),
    ...(capacity && embedded !== null && sliceColumns(site, layers, embedded)),
    ...demand(site, layers, capacity),
  };
}

/** All but the check of the drag, which is not known yet. */
function withoutDrag({ 'loads.c_tN': _, ...others }: Names): Names {
  return others;
}

/** Whether loads and weight press the pile in some combination that counts, whatever its capacity. */
function isPressed(site: Site, depth: number): boolean {
  const { inputs } = site;
  const { weight } = capacityAt(site, depth);
  return combinationsOf(inputs, loadsOf(inputs), factorsOf(inputs), null).some(
    ({ counts, withoutDrag, weighing }) =>
      counts && weight !== null && withoutDrag + weighing * Math.max(0, weight) > 0,
  );
}

function lengthLines(lengths: ReturnType<typeof lengthsOf>): Readonly<Record<string, Cell>> {
  return {
    El_m: lengths.mudline,
    El_0: lengths.zero,
    d_0: lengths.lost,
    L: lengths.embedded,
    L_fr: lengths.free,
    L_t: lengths.tip,
    L_c: lengths.head,
    L_ct: withAll([lengths.tip, lengths.head], (down, up) => down + up),
    L_p: lengths.whole,
    z_w: lengths.low,
    z_h: lengths.water,
  };
}

function layerColumns(layers: readonly Layer[]): Names {
  const column = (of: (layer: Layer) => Maybe) => layers.map(of);
  return {
    'pile.layers.z_a': column(({ logged }) => logged),
    'pile.layers.z_t': column(({ top }) => top),
    'pile.layers.z_b': column(({ bottom }) => bottom),
    'pile.layers.γ_u': column(({ water }) => water),
    "pile.layers.σ'_t": column(({ effectiveAbove }) => effectiveAbove),
    "pile.layers.σ'_b": column(({ effectiveBelow }) => effectiveBelow),
    'pile.layers.s_1': column(strengthAtTop),
    ...(layers.every(({ row }) => thickness(row) > 0) && { 'pile.layers.G_s': column(gainOfStrength) }),
  };
}

function ruleColumns(bearings: Site['bearings']): Names {
  const column = (of: (rules: Site['bearings'][number]['rules']) => Cell) =>
    bearings.map(({ rules }) => of(rules));
  return {
    'pile.layers.rule': column(({ rule }) => rule),
    'pile.layers.key': column(({ key }) => key),
    'pile.layers.from': column(({ from }) => from),
    'pile.layers.lim_c': column(({ limitOfClass }) => limitOfClass),
    'pile.layers.K': column(({ pressure }) => pressure),
    'pile.layers.δ_by': column(({ deltaBy }) => deltaBy),
    'pile.layers.δ': column(({ delta }) => delta),
    'pile.layers.β_by': column(({ betaBy }) => betaBy),
    'pile.layers.β': column(({ beta }) => beta),
    'pile.layers.lim_f': column(({ frictionLimit }) => frictionLimit),
    'pile.layers.rule_q': column(({ baseRule }) => baseRule),
    'pile.layers.N_q': column(({ bearing }) => bearing),
    'pile.layers.lim_q': column(({ baseLimit }) => baseLimit),
    'pile.layers.p_l': column(({ perimeter }) => perimeter),
  };
}

function sectionLines(inputs: Inputs, section: Section): Names {
  const wall = inputs.number('pile.t');
  const { materialLeft } = section;
  return {
    ...lines('pile', {
      D_i: mm(section.inside),
      p_o: section.perimeter,
      p_i: section.insidePerimeter,
      A_g: section.gross,
      A_pl: section.plug,
      A_r: section.ring,
      A_m: mm2(section.material),
      A_dis: section.displacing,
      γ_m: section.weightOfMaterial,
      w: section.weight,
      w_B: section.fill,
      k_β: section.displacesLittle ? 1 : 1.25,
      n_e: inputs.text('pile.f_depth') === 'ends' ? 2 : 1,
      c_z: mm(section.tableLoss),
      c_o: mm(section.loss),
      c_s: inputs.text('pile.material') === 'steel' ? mm(section.tableLoss) : 0,
      t_e: mm(section.wallLeft),
      A_e: mm2(materialLeft),
      r_A: withAll([materialLeft, section.material], (left, whole) => left / whole),
      I_e: withAll([section.inertiaLeft], (inertia) => inertia * 1e12),
      t_min: mm(section.leastWall),
    }),
    ...((section.corrodes || !section.isPipe) && { 'pile.m_p': section.corrodes ? 'steel' : 'solid' }),
    'pile.c_left': {
      verdict: materialLeft === null ? 'refused' : materialLeft > 0 ? 'holds' : 'fails',
    },
    'pile.c_corr': corrosionEntered(inputs, section.perimeter),
    'pile.c_wall': section.corrodes ? check(1000 * section.leastWall, wall) : { verdict: 'does not apply' },
  };
}

function heldLines(inputs: Inputs, held: ReturnType<typeof heldAt>): Names {
  return lines('pile', {
    ...(inputs.stated('pile.z_c') === null && { z_c: held.depth }),
    σ_c: held.total,
    u_c: held.pressure,
    "σ'_c": held.stress,
  });
}

/** The table of slices, where nothing of the shaft is left out. */
function sliceColumns(
  { inputs, bearings, slices, lengths }: Site,
  layers: readonly Layer[],
  embedded: number,
): Names {
  if (inputs.number('pile.z_ign') > 0) return {};
  const rows = slices.flatMap((slice) => {
    const [part] = partsBetween(inputs, [slice], slice.top, slice.bottom);
    const bearing = bearings[slice.of];
    return part && bearing ? [{ slice, depth: part.depth, bearing }] : [];
  });
  const column = (of: (row: (typeof rows)[number]) => Cell) => rows.map(of);
  const outside = ({ bearing, depth }: (typeof rows)[number]): Maybe =>
    withAll(
      [bearing.friction(depth), bearing.rules.perimeter],
      (friction, perimeter) => friction * perimeter,
    );
  return {
    'pile.slices.k': column(({ slice }) => slice.of + 1),
    'pile.slices.Δz': column(({ slice }) => slice.bottom - slice.top),
    'pile.slices.z_1': column(({ slice }) => slice.top),
    'pile.slices.z_2': column(({ slice }) => slice.bottom),
    'pile.slices.z': column(({ depth }) => depth),
    "pile.slices.σ'_v": column(({ bearing, depth }) => effectiveStress(bearing.layer, depth, lengths.water)),
    'pile.slices.soil_i': column(({ bearing }) => (bearing.layer.isClay ? 'clay' : 'sand')),
    'pile.slices.s_u': column(({ bearing, depth }) => strengthAt(bearing.layer, depth)),
    'pile.slices.f': column(({ bearing, depth }) => bearing.friction(depth)),
    'pile.slices.h_L': column(({ slice }) => Math.max(0, Math.min(slice.bottom, embedded) - slice.top)),
    'pile.slices.F_o': column(outside),
    'pile.slices.F_t': column((row) => withAll([outside(row)], (force) => force * row.bearing.uplift)),
    'pile.layers.h_w': layers.map(({ top, bottom }) =>
      withAll([lengths.water], (level) => Math.max(0, Math.min(bottom, embedded) - Math.max(top, level))),
    ),
    'pile.layers.h_a': layers.map(({ top, bottom }) => Math.max(0, Math.min(bottom, embedded) - top)),
    'pile.layers.h_r': layers.map(
      ({ top, bottom }) => bottom - top - Math.max(0, Math.min(bottom, embedded) - top),
    ),
  };
}

/** Capacity at the design tip, demand, and the length needed. */
function demand(
  site: Site,
  layers: readonly Layer[],
  found: { readonly byRule: Capacity; readonly counts: Capacity } | undefined,
): Names {
  const capacity = found?.counts;
  const { inputs, section, lengths } = site;
  const from = (of: (one: Capacity) => Maybe): Maybe => (capacity ? of(capacity) : null);
  const [shaft, base, pull, weight, lightWeight, plugWeight, above] = [
    inputs.stated('pile.Q_s') ?? from((one) => one.shaft),
    inputs.stated('pile.Q_b') ?? from((one) => one.base),
    inputs.stated('pile.Q_t') ?? from((one) => one.uplift),
    from((one) => one.weight),
    from((one) => one.lightWeight),
    from((one) => one.plugWeight),
    inputs.stated('pile.Q_n') ?? from((one) => one.drag),
  ] as const;
  const parts = sumOf([shaft, base]);
  const compression = inputs.stated('pile.Q_c') ?? parts;
  const whole = ratioOf(compression, parts);
  const uplift = inputs.stated('pile.T_u') ?? sumOf([pull, lightWeight, plugWeight]);
  const friction = withAll([uplift, lightWeight, plugWeight], (all, own, plug) => all - own - plug);
  const resists = {
    // What a test has shown where the rules give nothing is asked of the shaft.
    shaft: parts === 0 ? compression : withAll([shaft, whole], (one, by) => one * by),
    base: withAll([base, whole], (one, by) => one * by),
    uplift: friction,
    weight,
    lightWeight,
    plugWeight,
  };
  const ratios = {
    shaft: ratioOf(shaft, found?.byRule.shaft ?? null),
    base: ratioOf(base, found?.byRule.base ?? null),
    whole,
    uplift: ratioOf(friction, found?.byRule.uplift ?? null),
  };
  const loads = loadsOf(inputs);
  const factors = factorsOf(inputs);
  const quake = capacity ? quakeOf(site, capacity) : still;
  const combinations = combinationsOf(inputs, loads, factors, above, quake);
  const held = combinations.map((one) => holdAgainst(one, resists));
  const member = structure(
    inputs,
    section,
    lengths,
    held,
    above,
    (allowed) =>
      capacity ? neutralPlane(site, capacity, { dead: loads.dead, drag: above }, allowed, quake) : {},
    layers,
  );
  return {
    ...capacityLines(site, layers, capacity),
    ...lines('pile', {
      Q_s: shaft,
      Q_b: base,
      Q_t: pull,
      Q_tu: friction,
      Q_c: compression,
      T_u: uplift,
      Q_w: withAll([compression, weight], (all, own) => all - Math.max(0, own)),
    }),
    ...lines('loads', {
      N_D: loads.dead,
      N_L: loads.live,
      N_C: loads.crane,
      N_S: loads.storm,
      N_U: loads.uplift,
      F_1: factors.safety[0] ?? null,
      F_2: factors.safety[1] ?? null,
      F_3: factors.safety[2] ?? null,
      U_1: factors.upliftSafety[0] ?? null,
      U_2: factors.upliftSafety[1] ?? null,
      U_3: factors.upliftSafety[2] ?? null,
      φ_c: factors.resistance,
      φ_t: factors.upliftResistance,
    }),
    'pile.c_drag': where(
      above,
      check(
        above,
        from((one) => one.drag),
      ),
    ),
    ...takenLines(inputs, above),
    ...combinationColumns(held),
    ...governing(inputs, held, { ...resists, compression, friction, factors }),
    ...member,
    ...(capacity && {
      ...liquefactionLines(site, capacity, quake),
      ...tipLines(site, capacity),
      ...mostLines(site, capacity),
      ...groundLines(site, capacity, heldByFriction(inputs, factors, friction)),
      ...sidewaysLines(site, member['pile.z_f'] as Maybe),
      ...factorLines(site, capacity),
      ...blockLines(site, capacity, base, held, quake),
    }),
    ...(found && depthLines(site, { design: found.byRule, ratios }, held)),
  };
}

function capacityLines(site: Site, layers: readonly Layer[], capacity: Capacity | undefined): Names {
  if (!capacity) return {};
  const { inputs, section, lengths } = site;
  const { depth, of, outside, inside, ring, plug } = capacity;
  const layer = layers[of ?? -1];
  const bearing = site.bearings[of ?? -1];
  const total = layer ? totalStress(layer, depth) : null;
  const state = stateOf(inputs, capacity);
  const isAll = site.inputs.number('pile.z_ign') === 0;
  const shaftParts = isAll ? partsBetween(inputs, site.slices, 0, depth) : [];
  const meanStress = meanOver(
    shaftParts.map(({ of: index, depth: at, length }) => {
      const one = layers[index];
      return [one ? effectiveStress(one, at, lengths.water) : null, length] as const;
    }),
    depth,
  );
  const meanStrength = meanOver(
    shaftParts.map(({ of: index, depth: at, length }) => {
      const one = layers[index];
      return [one ? strengthAt(one, at) : null, length] as const;
    }),
    depth,
  );
  const sand = sumOf(
    layers.map(({ isClay, top, bottom }) => (isClay ? 0 : Math.max(0, Math.min(bottom, depth) - top))),
  );
  const byLambda = inputs.stated('pile.λ') ?? between(lambda, depth);
  const isWithin = of !== undefined;
  const byLayer = { 'pile.layers.Q_l': capacity.byLayer };
  const along = lines('pile', {
    k_t: of === undefined ? null : of + 1,
    soil_t: layer ? (layer.isClay ? 'clay' : 'sand') : null,
    rule_t: bearing ? bearing.rules.baseRule : null,
    lim_t: bearing ? bearing.rules.baseLimit : null,
    σ_q: total,
    u_q: withAll([total, capacity.stress], (all, effective) => all - effective),
    "σ'_q": capacity.stress,
    "σ'_h": capacity.followed,
    s_ut: capacity.strength,
    q: capacity.unit,
    Q_r: ring,
    Q_pl: plug,
    Q_o: outside,
    Q_i: inside,
    Q_un: withAll([outside, inside, plug, ring], (o, i, p, r) => o + Math.min(i, p) + r),
    Q_pg: withAll([outside, plug, ring], (o, p, r) => o + p + r),
    Q_co: withAll([outside, inside, ring], (o, i, r) => o + i + r),
    Q_in: capacity.within,
    ...(state !== undefined && { state }),
    ...(state !== undefined && section.isOpen && { inside: state }),
    ...(isWithin && {
      Q_nz: capacity.above,
      Q_σ: capacity.added,
      Q_n: inputs.stated('pile.Q_n') ?? capacity.drag,
    }),
    L_wet: wetLength(lengths.free, lengths.low, depth),
    L_wh: wetLength(lengths.free, lengths.water, depth),
    W_a: capacity.dryWeight,
    W: capacity.weight,
    W_h: capacity.lightWeight,
    W_pl: capacity.plugWeight,
    W_t: sumOf([capacity.lightWeight, capacity.plugWeight]),
    λ: byLambda,
    ...(isAll && isWithin && { "σ'_m": meanStress, s_m: meanStrength, h_s: sand }),
    ...(isAll &&
      isWithin &&
      sand === 0 && {
        Q_λ: withAll(
          [byLambda, meanStress, meanStrength, section.perimeter],
          (l, s, c, p) => l * (s + 2 * c) * p * depth,
        ),
      }),
  });
  return { ...byLayer, ...along };
}

function stateOf(inputs: Inputs, { within, plug }: Capacity): string | undefined {
  if (inputs.text('pile.pile_kind') === 'closed pipe') return undefined;
  if (inputs.text('pile.pile_kind') !== 'open pipe') return 'solid base';
  const rule = inputs.text('pile.plug_rule');
  if (rule !== 'lesser') return rule;
  if (within === null || plug === null) return undefined;
  return within < plug ? 'unplugged' : 'plugged';
}
