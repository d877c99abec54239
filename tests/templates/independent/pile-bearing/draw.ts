import type { Cell, Drawn, Random } from '../program.ts';
import type { Row } from './inputs.ts';
import { bearingByAngle, soilClasses } from './tables.ts';

const kinds = ['open pipe', 'closed pipe', 'square', 'round', 'octagon', 'stated'] as const;
const clayRules = [
  'API',
  'USACE',
  'linear 25-70',
  'Terzaghi',
  'NAVFAC steel',
  'NAVFAC concrete',
  'beta',
  'K tan delta',
  'alpha stated',
  'f stated',
] as const;
const sandRules = ['beta', 'K tan delta', 'beta stated', 'f stated'] as const;
const classes = Object.keys(soilClasses);
const withBeta = classes.filter((name) => soilClasses[name]?.beta !== undefined);
const lowestAngle = Math.min(...bearingByAngle.map(([angle]) => angle));
const highestAngle = Math.max(...bearingByAngle.map(([angle]) => angle));

/** Draws a site, a pile and its loads: mostly sensible, often at a boundary, sometimes absurd. */
export function drawPile(random: Random): Drawn {
  const embedded = random.chance(0.03) ? random.between(0.1, 1) : random.over(3, 60);
  const clayRule = random.of(clayRules);
  const sandRule = random.of(sandRules);
  const thickest = random.chance(0.25) ? 300 : embedded / random.between(1.2, 7);
  const step = random.chance(0.1) ? embedded : embedded / random.between(1.3, 4.5);
  const levels = drawLevels(random, embedded);
  const isConcrete = random.chance(0.4);
  const basis = random.of(['ASD', 'LRFD']);
  return {
    lines: {
      ...levels.lines,
      ...drawSection(random, isConcrete),
      'pile.γ_w': random.of([9.81, 10.05, random.between(9.75, 10.2)]),
      'pile.z_n': random.chance(0.7)
        ? 0
        : random.chance(0.1)
          ? embedded * 1.2
          : random.between(0, 0.7) * embedded,
      'pile.Q_f': random.chance(0.8) ? 0 : random.over(1, 30) * embedded,
      'pile.zone': random.of(['soil', 'fresh water', 'sea, immersed', 'sea, low water and splash']),
      'pile.life': random.of([0, 5, 25, 50, 75, 100, random.between(0, 100)]),
      'pile.c_i': isConcrete || random.chance(0.7) ? 0 : random.between(0, 3),
      'pile.σ_s': random.chance(0.7) ? 0 : random.between(0, 60),
      'pile.s_is': random.of(['permanent', 'load only']),
      'pile.γ_fl': random.of([18.85, random.between(14.2, 23.5)]),
      'pile.F_σ': random.of([1.5, random.between(1.3, 3)]),
      'pile.H_a': random.chance(0.6) ? 0 : random.between(0, 6),
      'pile.K_is': random.of(['kind of pile', 'at rest']),
      'pile.clay_rule': clayRule,
      'pile.sand_rule': sandRule,
      'pile.plug_rule': random.chance(0.6) ? 'lesser' : random.of(['plugged', 'coring']),
      'pile.plug_up': random.of(['left out', 'counted']),
      'pile.f_depth': random.chance(0.6) ? 'mid' : random.of(['top', 'base', 'ends']),
      'pile.dz': thickest,
      'pile.z_ign': random.chance(0.75) ? 0 : random.between(0, 0.3) * embedded,
      ...drawGroup(random),
      'pile.n_emb': random.of([0, 3, random.between(0, 10)]),
      'pile.n_pun': random.of([0, 3, random.between(0, 10)]),
      'pile.n_bor': random.of([2, 3, random.between(2, 20)]),
      'pile.N_c': random.of([9, 5, 12, random.between(5, 12)]),
      'pile.r_clay': random.of([1, 0.7, 0, random.between(0, 1)]),
      'pile.r_sand': random.of([1, 0.5, 0, random.between(0, 1)]),
      'pile.η_g': random.of([1, 0.1, random.between(0.1, 1)]),
      'pile.η_t': random.of([1, 0.1, random.between(0.1, 1)]),
      ...drawStated(random, embedded),
      ...(random.chance(0.15) && { 'pile.z_c': random.between(0.1, 0.95) * embedded }),
      ...drawLoads(random, embedded),
      'loads.basis': basis,
      'depth.dz_p': Math.max(0.04, step),
      'depth.L_x': random.of([0, random.between(0, 3)]),
    },
    tables: {
      'pile.layers': drawLayers(random, { embedded, lost: levels.lost, clayRule, sandRule, isConcrete }),
      'loads.combos': drawCombinations(random, basis),
    },
  };
}

/** One pile, a row, or a group of rows; sometimes of so many and a half. */
function drawGroup(random: Random): Row {
  const piles = (): number =>
    random.chance(0.02) ? random.of([0.5, 2.5]) : random.of([1, 2, random.whole(1, 9)]);
  return {
    'pile.n_x': random.chance(0.4) ? 1 : piles(),
    'pile.n_y': random.chance(0.4) ? 1 : piles(),
    'pile.s_x': random.over(0.3, 12),
    ...(random.chance(0.7) && { 'pile.s_y': random.over(0.3, 12) }),
    'loads.φ_g': random.of([0.6, random.between(0.05, 1)]),
    'loads.φ_gt': random.of([0.5, random.between(0.05, 1)]),
  };
}

/** What a test, a chart or the design criteria give in place of a calculated value. */
function drawStated(random: Random, embedded: number): Row {
  const force = embedded ** 1.5 * random.over(3, 60);
  const known: readonly (readonly [name: string, value: number])[] = [
    ['pile.Q_s', force],
    ['pile.Q_b', force],
    ['pile.Q_n', force / 4],
    ['pile.Q_c', force],
    ['pile.Q_t', force],
    ['pile.T_u', force],
    ['pile.W_o', force / 20],
    ['pile.q', random.between(100, 10_000)],
    ['pile.s_ut', random.between(10, 300)],
    ['pile.λ', random.between(0.1, 0.4)],
    ['pile.X_g', random.between(0.2, 8)],
    ['pile.c_o', random.between(0, 3)],
    ['loads.N_D', force / 3],
    ['loads.N_U', force / 3],
    ['loads.F_1', random.between(1.2, 4)],
    ['loads.U_2', random.between(1.2, 4)],
    ['loads.φ_c', random.between(0.2, 0.9)],
    ['loads.L_f', random.between(0, 8)],
    ['loads.k_n', random.between(1, 1.5)],
    ['loads.k_wb', random.between(0.005, 0.1)],
    ['loads.k_us', random.between(0, 0.3)],
    ['loads.k_En', random.between(0, 0.1)],
  ];
  return random.chance(0.75) ? {} : Object.fromEntries(known.filter(() => random.chance(0.12)));
}

function drawLevels(random: Random, embedded: number): { readonly lines: Row; readonly lost: number } {
  const byLevels = random.chance(0.5);
  const bed = random.between(-20, 2);
  const dredged = random.chance(0.6) ? bed - random.between(0, 5) : bed + random.between(0, 3);
  const over = random.of([0, random.between(0, 1.5)]);
  const scour = random.of([0, random.between(0, 4)]);
  const mudline = Math.min(bed, dredged - over) - scour;
  const free = random.chance(0.15) ? 0 : random.between(0, 25);
  const tip = random.chance(0.01) ? mudline + random.between(0, 5) : mudline - embedded;
  const level = (value: number): string => `El. ${Math.abs(value) < 1e-6 ? 0 : value} m`;
  // The water stands above the pile, over the mudline, at it, or below the tip.
  const water = random.of([
    -random.between(0, 25),
    -random.between(0, 25),
    0,
    random.between(0, 1.3) * embedded,
    random.of([-60, 200]),
  ]);
  const lost = byLevels ? bed - mudline : 0;
  return {
    lost,
    lines: {
      'pile.z_by': byLevels ? 'levels' : 'lengths',
      'pile.El_cut': level(mudline + free),
      'pile.El_w': level(mudline - water),
      'pile.d_w': random.of([0, random.between(0, 3), random.between(0, 16)]),
      'pile.El_bed': level(bed),
      'pile.El_dr': level(dredged),
      'pile.d_over': over,
      'pile.d_sc': scour,
      'pile.El_tip': level(tip),
      'pile.L_in': byLevels && random.chance(0.5) ? null : random.chance(0.02) ? null : embedded,
      'pile.z_w_in': byLevels && random.chance(0.5) ? null : random.chance(0.02) ? null : water,
      'pile.L_fr_in': byLevels && random.chance(0.5) ? null : random.chance(0.02) ? null : free,
    },
  };
}

function drawSection(random: Random, isConcrete: boolean): Row {
  const kind = random.of(kinds);
  const isPipe = kind.endsWith('pipe');
  // A wall thicker than half the pile leaves no bore.
  const hasNoBore = isPipe && random.chance(0.03);
  const size = hasNoBore ? random.between(110, 280) : random.over(200, 3000);
  const ratio = isConcrete ? random.between(0.08, 0.3) : random.over(0.006, 0.06);
  const wall = hasNoBore ? random.between(0.5, 0.53) * size : Math.min(150, Math.max(2.6, size * ratio));
  const area = size ** 2 * random.between(0.02, 0.9);
  const isBlank = (): boolean => kind !== 'stated' || random.chance(0.03);
  return {
    'pile.pile_kind': kind,
    'pile.material': isConcrete ? 'concrete' : 'steel',
    'pile.D': size,
    'pile.t': wall,
    'pile.p_in': isBlank() ? null : (random.between(3, 6) * size) / 1000,
    'pile.A_b_in': isBlank() ? null : random.between(0.6, 1) * (size / 1000) ** 2,
    'pile.A_m_in': isBlank() ? null : area,
    'pile.I_in': isBlank()
      ? null
      : area * size ** 2 * random.of([random.between(0.05, 0.15), random.between(0.1, 0.4)]),
    'pile.p_c': kind === 'stated' ? random.of([0, (random.between(0, 8) * size) / 1000]) : 0,
    'pile.λ_f': kind === 'stated' && random.chance(0.9) ? random.between(0.1, 20) : 0,
    'pile.γ_st': random.of([77, random.between(75, 79)]),
    'pile.γ_con': random.between(21, 26),
    'pile.h_B': random.chance(0.5) ? 0 : random.over(0.5, 60),
    'pile.γ_B': random.of([23.6, random.between(9.8, 35)]),
  };
}

function drawLayers(
  random: Random,
  site: {
    readonly embedded: number;
    readonly lost: number;
    readonly clayRule: string;
    readonly sandRule: string;
    readonly isConcrete: boolean;
  },
): readonly Row[] {
  const count = random.chance(0.15) ? 1 : random.chance(0.02) ? 40 : random.whole(2, 4);
  const depth =
    site.lost + site.embedded * (random.chance(0.04) ? random.between(0.5, 0.99) : random.between(1.02, 1.6));
  const cuts = Array.from({ length: count - 1 }, () => random.between(0, 1) * depth);
  // The end of a layer at the tip, at the mudline, or a layer of no thickness.
  if (cuts.length > 0 && random.chance(0.12)) cuts[0] = site.lost + site.embedded;
  if (cuts.length > 1 && random.chance(0.08)) cuts[1] = site.lost;
  if (cuts.length > 2 && random.chance(0.06)) cuts[1] = cuts[2] ?? 0;
  const bottoms = [...cuts.filter((cut) => cut <= depth).toSorted((a, b) => a - b), depth];
  return bottoms.map((bottom, index) => {
    const thickness = Math.max(0, bottom - (bottoms[index - 1] ?? 0));
    const isEffective = random.chance(0.3);
    return {
      h: thickness,
      γ: random.chance(0.01)
        ? random.between(5, 9)
        : isEffective
          ? random.between(4, 12)
          : random.between(14, 22),
      γ_is: isEffective ? 'effective' : 'total',
      ...(random.chance(0.5) ? drawClay(random, site.clayRule) : drawSand(random, site.sandRule)),
      ...(random.chance(0.05) && { p_l: random.between(0.5, 8) }),
    };
  });
}

function drawClay(random: Random, chosen: string): Row {
  const rule = random.chance(0.1) ? random.of(clayRules) : chosen;
  const most = rule === 'Terzaghi' ? 290 : rule.startsWith('NAVFAC') ? 195 : 400;
  const strength = random.chance(0.05) ? 0 : random.over(4, most);
  const below = random.of([
    strength,
    strength * random.between(0.5, 1),
    Math.min(most, strength * random.between(1, 3)),
  ]);
  const byStress = random.chance(0.08);
  return {
    soil: 'clay',
    lq: random.chance(0.9) ? null : random.of(['not assessed', 'does not liquefy', 'liquefies']),
    s_u1: random.chance(0.01) ? null : strength,
    s_u2: random.chance(0.01) ? null : below,
    // Words and figures of a sand, that a clay does not read.
    class: random.chance(0.1) ? random.of(classes) : null,
    φ: random.chance(rule === 'K tan delta' ? 0.98 : 0.1) ? random.between(20, 48) : null,
    OCR: random.chance(0.5) ? null : random.between(1, 8),
    i_w: random.chance(0.7) ? null : random.between(0, 0.5),
    α_in: rule === 'alpha stated' && !random.chance(0.02) ? random.between(0, 1.5) : null,
    β_in: rule.startsWith('beta') && !random.chance(0.02) ? random.between(0, 0.6) : null,
    f_in: rule === 'f stated' && !random.chance(0.02) ? random.between(0, 150) : null,
    ...(rule !== chosen && { rule }),
    ...(byStress && { rule_q: 'N_q stated', N_q: random.between(0, 40) }),
    ...(!byStress && drawStatedBase(random)),
    ...drawLimits(random, false),
  };
}

function drawSand(random: Random, chosen: string): Row {
  const rule = random.chance(0.1) ? random.of(sandRules) : chosen;
  const hasClass = rule === 'beta' ? !random.chance(0.02) : random.chance(0.6);
  const className = rule === 'beta' && !random.chance(0.04) ? random.of(withBeta) : random.of(classes);
  const angle = random.chance(0.15) ? random.between(20, 48) : random.between(lowestAngle, highestAngle);
  const whole = random.of([lowestAngle, 30, highestAngle]);
  return {
    soil: 'sand',
    lq: random.of([null, 'not assessed', 'does not liquefy', 'does not liquefy', 'liquefies']),
    lq_by: random.of([
      null,
      'not named',
      'blow counts',
      'cone tests',
      'shear waves',
      'cyclic tests',
      'screening',
    ]),
    F_lq: random.of([null, 1.25, random.between(0.5, 2.5)]),
    s_u1: random.chance(0.05) ? 50 : null,
    s_u2: random.chance(0.05) ? 50 : null,
    class: hasClass ? className : random.of(['none', null]),
    OCR: random.chance(0.5) ? null : random.between(1, 8),
    i_w: random.chance(0.7) ? null : random.between(0, 0.5),
    φ:
      random.chance(0.02) || (hasClass && random.chance(rule === 'K tan delta' ? 0.2 : 0.7))
        ? null
        : random.chance(0.1)
          ? whole
          : angle,
    β_in: rule === 'beta stated' && !random.chance(0.02) ? random.between(0, 1.2) : null,
    f_in: rule === 'f stated' && !random.chance(0.02) ? random.between(0, 200) : null,
    ...(rule !== chosen && { rule }),
    ...(random.chance(0.1) && { K: random.between(0.2, 2) }),
    ...(rule === 'K tan delta' && random.chance(0.1) && { δ: random.between(5, 35) }),
    ...(random.chance(0.08) ? { rule_q: 'N_q stated', N_q: random.between(0, 150) } : drawStatedBase(random)),
    ...drawLimits(random, hasClass),
  };
}

function drawStatedBase(random: Random): Row {
  if (!random.chance(0.08)) return {};
  return { rule_q: 'q stated', q_in: random.chance(0.05) ? null : random.between(0, 12_000) };
}

function drawLimits(random: Random, hasClass: boolean): Row {
  const limit = (): string => random.of(hasClass ? ['class', 'stated', 'none'] : ['stated', 'none']);
  const [friction, base] = [
    random.chance(0.1) ? limit() : undefined,
    random.chance(0.1) ? limit() : undefined,
  ];
  return {
    ...(friction !== undefined && { lim_f: friction }),
    ...(base !== undefined && { lim_q: base }),
    f_l_in: friction === 'stated' ? (random.chance(0.05) ? null : random.between(5, 150)) : null,
    q_l_in: base === 'stated' ? (random.chance(0.05) ? null : random.between(100, 15_000)) : null,
  };
}

function drawLoads(random: Random, embedded: number): Row {
  const size = random.over(0.1, 3) * embedded ** 0.7;
  const rail = size * random.between(0, 70);
  const apart = random.between(0.5, 4);
  return {
    'loads.s_p': random.between(2, 8),
    'loads.b_d': random.chance(0.05) ? 0 : random.between(1, 8),
    'loads.w_d': size * random.between(0, 3),
    'loads.w_b': size * random.of([random.between(0, 12), random.between(0, 0.3)]),
    'loads.q_l': size * random.of([0, random.between(0, 8)]),
    'loads.w_c': rail,
    'loads.s_w': apart,
    'loads.R_w':
      Math.max(1, rail * apart) * (random.chance(0.5) ? random.between(0.88, 1.12) : random.of([3, 0.3])),
    'loads.m_c': random.of([1, 1.25, random.between(1, 2)]),
    'loads.w_s': random.chance(0.1) ? 0 : size * random.between(0, 90),
    'loads.u_s': size * random.of([0, random.between(0, 40)]),
    'loads.N_E': size * random.of([0, random.between(0, 200), random.between(0, 1)]),
    'loads.f_y': random.of([250, 345, random.between(140, 800)]),
    'loads.E_s': random.of([200_000, random.between(190_000, 215_000)]),
    "loads.f'_c": random.between(20, 80),
    'loads.f_pe': random.of([0, random.between(0, 12)]),
    'loads.E_c': random.between(20_000, 45_000),
    'loads.K_e': random.of([0.5, 1.2, 2.5, random.between(0.5, 2.5)]),
    'loads.head': random.of(['sways, fixed', 'sways, hinged', 'held, fixed', 'held, hinged']),
    'loads.fix': random.of(['clay', 'sand']),
    'loads.s_uf': random.over(2, 150),
    'loads.n_h': random.over(500, 60_000),
    'loads.fix_e': random.of(['clay', 'sand']),
    'loads.s_ufe': random.over(2, 150),
    'loads.n_he': random.over(500, 60_000),
    'loads.n_b': random.of([1, 2.5, random.between(1, 6)]),
    'loads.verified': random.of(['load test', 'dynamic test', 'no test']),
    'loads.φ_by': random.of([
      'static test and dynamic',
      'static test',
      'dynamic, all piles',
      'dynamic, 2 % of piles',
      'static: alpha',
      'static: beta',
      'static: lambda',
    ]),
    'loads.φ_x': random.of([1, 0.05, random.between(0.05, 1)]),
    'loads.φ_xt': random.of([1, 0.8, random.between(0.05, 1)]),
    'loads.f_min': random.of([0.6, random.between(0.5, 1)]),
    'loads.W_is': random.chance(0.7) ? 'counted' : 'left out',
    ...(random.chance(0.05) && { 'loads.f_nV': random.between(0, 1) }),
  };
}

function drawCombinations(random: Random, basis: string): readonly Row[] {
  const count = random.chance(0.15) ? random.whole(0, 1) : random.chance(0.02) ? 40 : random.whole(2, 6);
  return Array.from({ length: count }, (_, index) => {
    const isLifting = random.chance(0.35);
    const factor = (often: number, most: number): number =>
      random.chance(often) ? random.between(0, most) : 0;
    const pressing: Readonly<Record<string, Cell>> = {
      f_D: random.of([1, 1.2, random.between(0.9, 1.4)]),
      f_L: random.chance(0.2) ? 1 : factor(0.6, 1.7),
      f_C: random.chance(0.2) ? 1 : factor(0.4, 1.7),
      f_S: random.chance(0.2) ? 1 : factor(0.3, 1.5),
      f_U: 0,
      f_E: factor(0.2, 1),
      f_N: random.chance(0.5) ? random.of([1, 1.25, 1.4]) : 0,
    };
    const lifting: Readonly<Record<string, Cell>> = {
      f_D: random.of([0, 0.9, random.between(0.5, 1)]),
      f_L: 0,
      f_C: 0,
      f_S: 0,
      f_U: factor(0.7, 1.6),
      f_E: random.chance(0.4) ? -random.between(0, 1) : 0,
      f_N: 0,
    };
    return {
      combo: `combination ${index + 1}`,
      design: random.chance(0.75) ? basis : random.of(['ASD', 'LRFD']),
      cond: random.of(['usual', 'unusual', 'extreme']),
      ...(isLifting ? lifting : pressing),
      ...(random.chance(0.05) && { F_b: random.between(1.1, 4) }),
    };
  });
}
