import type { Cell, Drawn, Random } from '../program.ts';
import type { Row } from './arithmetic.ts';

/**
 * Inputs of one estimate. Most are those of a job that could be; in three of ten some are at the end of their range, or
 * zero, blank or absurd.
 */
export function drawEstimate(random: Random): Drawn {
  const isOdd = random.chance(0.3);
  const { lines, tables } = { lines: drawLines(random), tables: drawTables(random, isOdd) };
  return { lines: isOdd ? spoil(random, lines) : lines, tables };
}

function drawLines(random: Random): Readonly<Record<string, Cell>> {
  const { between, over, whole, of, chance } = random;
  const fleetBy = of(['round up', 'round down', 'lowest cost', 'days allowed', 'stated']);
  const policy = of([
    'short load',
    'part bucket',
    'full bucket',
    'in proportion',
    'stated buckets',
    'stated load',
  ]);
  const body = over(6, 30);
  const loadBy = of(['buckets', 'buckets', 'loose output', 'bank output']);
  const job = chance(0.8) ? 'items' : 'stated volume';
  const swell = 1 + between(0.02, 0.7);
  const bank = between(1400, 2300);
  return {
    'basis.t_eff': of([60, 50, 45, between(10, 60)]),
    'basis.h_s': of([8, 10, between(4, 12)]),
    'basis.n_d': of([1, 2, 3]),
    'basis.ρ_s': of([7850, between(7690, 8009)]),
    'quantity.L_w': over(5, 600),
    'quantity.B_w': over(3, 60),
    'quantity.R_s': of([0, 100, between(0, 100)]),
    'quantity.a_min': of([1, over(0.001, 100)]),

    'breaking.order': of(['in turn', 'together']),

    'haul.V_k': body,
    'haul.F_k': of([100, between(30, 120)]),
    'haul.P': body * between(0.9, 2.2),
    'haul.W_k': between(6, 25),
    'haul.W_m': between(15, 80),
    'haul.law': of([
      'United States',
      'European Union',
      'Canada',
      'Michigan',
      'Sweden',
      'Finland',
      'other law',
      'permit',
      'private ground',
    ]),
    'haul.W_p': of([null, between(20, 200), between(20, 200)]),
    'haul.W_pa': of([null, between(5, 13), between(5, 13)]),
    'haul.n_a': of([2, 3, 5, whole(2, 20), between(2, 20)]),
    'haul.W_ga': of([null, between(3, 40), between(3, 40)]),
    'haul.L_x': over(2, 60),
    'haul.W_s': of([null, between(20, 80), between(20, 80)]),
    'haul.P_e': over(60, 700),
    'haul.η_e': between(50, 85),
    'haul.V_q': over(0.5, 5),
    'haul.F_q': of([0.8, 1, between(0.5, 1.2)]),
    'haul.t_q0': between(0.3, 1),
    'haul.n_L': of([1, 1, 1, 2, 3, 6]),
    'haul.t_x': of([0, between(0, 1.5)]),
    'haul.t_sp': of([0, between(0, 1.5)]),
    'haul.t_d': between(0, 4),
    'haul.t_w': of([0, between(0, 15)]),
    'haul.c_L': between(50, 250),
    'haul.c_O': of([0, between(40, 150)]),
    'haul.c_T': between(30, 180),
    'haul.c_D': between(0, 120),
    'haul.c_X': of([0, between(0, 300)]),
    'haul.job': job,
    'haul.V_js': job === 'items' ? of([null, 500]) : over(20, 20_000),
    'haul.D_a': over(2, 200),
    'haul.pay': of(['hours', 'whole days']),
    'haul.n_p': whole(1, 40),
    'haul.N_p': whole(10, 400),
    'haul.MF_m': between(0.8, 1.6),
    'haul.fleet_by': fleetBy,
    'haul.n_s': fleetBy === 'stated' ? whole(1, 40) : of([null, 4]),
    'haul.policy': policy,
    'haul.n_qs': policy === 'stated buckets' ? whole(1, 12) : of([null, 3]),
    'haul.q_ks': policy === 'stated load' ? body * between(0.3, 1.3) : of([null, 8]),
    'haul.load_by': loadBy,
    'haul.Q_s': loadBy === 'loose output' ? over(20, 500) : of([null, 100]),
    'haul.Q_bs': loadBy === 'bank output' ? over(20, 500) : of([null, 100]),
    'haul.n_max': of([1, 5, 12, 20, 60]),
    'haul.model': of(['lesser', 'queue']),

    'stockpile.k_p': of([100, between(0.5, 100), between(0.5, 20)]),
    'stockpile.φ': of([20, 50, 37, 45, between(20, 50)]),
    'stockpile.shape': of(['cone', 'set length', 'set height']),
    'stockpile.L_p': over(0.3048, 200),
    'stockpile.H_p': over(0.3048, 15),
    'stockpile.w_s': of([0, between(0, 10)]),
    'stockpile.A_a': over(20, 20_000),
    'stockpile.p_a': over(5, 200),
    'stockpile.H_m': over(1, 20),

    'dust.i_w': over(0.1, 9),
    'dust.t_i': over(0.1, 24),
    'dust.p_e': of([0, between(0, 1.2)]),
    'dust.q_n': of([0, between(0, 2)]),
    'dust.V_k': over(400, 40_000),
    'dust.c_k': between(0, 2000),
    'dust.c_w': between(0, 0.02),
    'dust.η_m': of([70, between(1, 99)]),

    'fill.state': of(['bank', 'loose', 'compacted']),
    'fill.A_f': of([0, over(10, 20_000)]),
    'fill.h_f': of([0, between(50, 3000)]),
    'fill.w_f': of([0, 50, between(0, 50)]),
    'fill.ρ_b': bank,
    'fill.c_f': between(0, 60),
    'fill.k_u': of([0, 0, 100, between(0, 100)]),
    'fill.SF_u': between(0.8, 1.4),
    'fill.c_u': of([0, between(0, 30)]),
    'fill.by_f': of(['supplier', 'own trucks']),
    'fill.L_f': of([0, over(0.3, 60)]),
    'fill.v_f': between(10, 90),
    'fill.t_lf': between(0.5, 20),
    'fill.t_df': of([0, between(0, 8)]),
    'fill.n_tf': whole(1, 30),
    'fill.swell_by': of(['percent', 'factor', 'load factor', 'loose density']),
    'fill.S_s': of([0, 150, 100 * (swell - 1)]),
    'fill.F_s': swell,
    'fill.LF_s': 1 / swell,
    'fill.ρ_ls': bank / swell,
    'fill.shrink_by': of(['percent', 'factor', 'compacted density']),
    'fill.Z_s': of([-40, 60, between(-40, 60)]),
    'fill.SF_s': between(0.6, 1.4),
    'fill.ρ_cs': bank / between(0.6, 1.4),

    'cost.fill_at': of(['after', 'alongside']),
    'cost.D_m': of([0, whole(1, 20), between(0, 20)]),
    'cost.overlap': of(['together', 'in turn']),
    'cost.D_l': of([0, whole(1, 10), between(0, 10)]),
    'cost.D_w': over(3, 300),
    'cost.c_s': of([between(0, 400), between(0, 400), over(400, 100_000)]),
    'cost.k_o': of([0, between(0, 40), 100]),
    'cost.k_c': of([0, between(0, 40), 100]),
    'cost.k_by': of(['percentage', 'ranges apart', 'ranges together']),
    'cost.p_k': of([50, 80, between(50, 99), between(1, 99)]),
  };
}

/** Lines that are made zero, negative, blank, or pushed to where a careful template must say something. */
function spoil(random: Random, lines: Readonly<Record<string, Cell>>): Readonly<Record<string, Cell>> {
  const { of, whole, between } = random;
  const corners: readonly (readonly [string, readonly Cell[]])[] = [
    ['quantity.L_w', [0, null]],
    ['haul.W_k', [0, -20, null]],
    ['haul.W_m', [0, -10, null]],
    ['haul.P', [0.91, 136]],
    ['haul.V_k', [0.8, 61]],
    ['haul.V_q', [0.08, 22.9]],
    ['haul.t_x', [null]],
    ['haul.n_p', [0, -3, null]],
    ['haul.N_p', [0, -1, null]],
    ['haul.MF_m', [0, -1, null]],
    ['haul.D_a', [0.5, null]],
    ['haul.n_s', [null, 0, -2, 2.5, 80]],
    ['haul.n_qs', [null, 0, -1, 2.5]],
    ['haul.q_ks', [null, 0, -5]],
    ['haul.Q_s', [null, 0, -40]],
    ['haul.Q_bs', [null, 0, -40]],
    ['haul.V_js', [null, 0, -100]],
    ['haul.c_L', [0]],
    ['stockpile.k_p', [0, null]],
    ['stockpile.A_a', [0, -50, null]],
    ['stockpile.p_a', [0, -5, null]],
    ['stockpile.H_m', [0, -2, null]],
    ['dust.p_e', [-0.5, 20, null]],
    ['dust.η_m', [0, 100, 120, null]],
    ['fill.ρ_b', [0, -100, null]],
    ['fill.F_s', [0, -1, 0.8, null]],
    ['fill.LF_s', [0, -1, 1.25, null]],
    ['fill.ρ_ls', [0, -1, 9000, null]],
    ['fill.SF_s', [0, -1, null]],
    ['fill.ρ_cs', [0, -1, null]],
    ['cost.D_w', [0, -4, null]],
    ['basis.n_d', [1.5]],
    ['basis.t_eff', [9, 61, 600]],
    ['basis.g', [9.6, 98.0665]],
    ['basis.ρ_s', [785, 8100]],
    ['quantity.R_s', [101, 9500]],
    ['haul.F_k', [29, 121, 9000]],
    ['haul.F_q', [0.29, 1.31, 80]],
    ['haul.V_k', [61.3, 160]],
    ['haul.P', [0.9, 136.2, 2000]],
    ['haul.V_q', [0.07, 23]],
    ['haul.t_q0', [0.05, 30]],
    ['haul.MF_m', [0.49, 2.01, 125]],
    ['stockpile.φ', [19, 51, 80]],
    ['dust.i_w', [0.08, 9.1, 220]],
    ['dust.t_i', [0.09, 25]],
    ['fill.F_s', [2.51, 95]],
    ['fill.LF_s', [0.39, 95]],
    ['fill.SF_s', [0.39, 1.41, 95]],
    ['fill.ρ_b', [790, 2890]],
    ['fill.n_tf', [0, 2.5, null]],
    ['fill.v_f', [0, 130, null]],
    ['fill.k_u', [101, -5, null]],
    ['fill.SF_u', [0.39, 1.5, 95]],
    ['cost.p_k', [49, 99.5]],
  ];
  const spoilt = Array.from({ length: whole(1, 3) }, () => {
    const [name, cells] = of(corners);
    return [name, of(cells)] as const;
  });
  return { ...lines, 'basis.h_s': between(4, 12), ...Object.fromEntries(spoilt) };
}

const parts = [
  'breaking',
  'loading and hauling',
  'disposal fees',
  'recycling charges',
  'scrap credit',
  'dust control',
  'imported fill',
  'other lines',
];

function drawTables(random: Random, isOdd: boolean): Drawn['tables'] {
  const { between, over, whole, of, chance } = random;
  const odd = (part: number) => isOdd && chance(part);
  const names = Array.from({ length: whole(1, 6) }, (_, row) => `material ${row + 1}`);
  const materials = names.map((material): Row => {
    const kind = of(['asphalt', 'base', 'concrete', 'concrete', 'earth', 'timber', 'metal', 'other']);
    const density = kind === 'timber' ? between(500, 1100) : between(1500, 2600);
    const swell = of([1, 1 + between(0.02, 0.8), 1 + between(0.02, 0.8)]);
    return {
      material: odd(0.03) ? 'material 1' : material,
      kind,
      ρ: odd(0.04) ? of([0, null]) : density,
      γ: odd(0.04) ? of([0, null]) : (density * 9.80665) / 1000,
      ρ_by: of(['density', 'density', 'unit weight', null]),
      by: of(['percent', 'factor', 'load factor', 'loose density']),
      S_s: odd(0.04) ? of([-100, -20, null]) : 100 * (swell - 1),
      F_s: odd(0.04) ? of([0, 0.8, null]) : swell,
      LF_s: odd(0.04) ? of([0, 1.25, null]) : 1 / swell,
      ρ_ls: odd(0.04) ? of([0, 5000, null]) : density / swell,
      R: of([null, 0, 100, between(0, 100)]),
      c_d: of([null, 0, between(10, 200), between(10, 200)]),
      c_r: of([null, between(-10, 20)]),
      source: of([null, 'a weighbridge ticket']),
    };
  });
  const long = chance(0.03);
  const items = Array.from(
    { length: long ? 40 : of([1, whole(1, 4), whole(2, 9)]) },
    (_, row) => `item ${row + 1}`,
  );
  const takeoff = items.map((item): Row => {
    const from = of(['whole strip', 'area', 'volume', null]);
    const by = of(['mass', 'part', null]);
    return {
      item: chance(0.03) ? 'item 1' : item,
      material: odd(0.02) ? 'nothing of the list' : of(names),
      area: (from ?? 'area') === 'area' && !odd(0.03) ? over(5, 5000) : of([null, 0, 100]),
      thick: from === 'volume' ? of([null, 100]) : odd(0.05) ? of([0, null]) : between(25, 900),
      V_s: from === 'volume' && !odd(0.05) ? over(1, 2000) : of([null, 0, 50]),
      from,
      w: of([null, 0, 5, between(0, 100)]),
      s_s: odd(0.03) ? 3000 : of([null, 0, between(0, 250)]),
      s_p: odd(0.03) ? 60 : of([null, 0, between(0, 4)]),
      s_by: by,
      off: chance(0.7) ? of([null, 100]) : of([0, between(0, 100)]),
      V_d: chance(0.7) ? of([null, 0]) : odd(0.2) ? -2 : over(0.01, 5),
    };
  });
  const works = items
    .filter(() => chance(0.7))
    .map(
      (item): Row => ({
        item: odd(0.03) ? of(['item 1', 'nothing of the takeoff']) : item,
        by: of(['volume', 'area', 'hours']),
        R_v: odd(0.03) ? of([0, null]) : over(2, 100),
        R_a: odd(0.03) ? of([0, null]) : over(10, 500),
        h_v: odd(0.03) ? of([0, null]) : over(0.02, 5),
        k: odd(0.03) ? 0 : of([null, 1, between(0.3, 1.2)]),
        n: odd(0.03) ? 0 : of([null, 1, whole(1, 5)]),
        c: odd(0.1) ? of([null, 0]) : between(60, 400),
      }),
    );
  const fenced = chance(0.4);
  const route = Array.from({ length: whole(1, 5) }, (_, row): Row => {
    const isDriven = chance(0.6);
    return {
      segment: `leg ${row + 1}`,
      land: fenced ? 'private ground' : of(['public road', 'private ground', null]),
      dist: of([0, over(0.05, 30), over(0.05, 8)]),
      grade: of([null, 0, between(-3, 5)]),
      roll: of([null, 1.5, between(0, 5)]),
      v_os: odd(0.04) ? of([0, -10, null]) : isDriven ? between(10, 90) : of([null, 30]),
      v_bs: odd(0.04) ? of([0, -10, null]) : isDriven ? between(10, 90) : of([null, 30]),
      v_by: isDriven ? of(['driven', null]) : 'resistance',
    };
  });
  const count = whole(1, 5);
  const groups = Array.from({ length: count }, (_, row): Row => {
    const n = odd(0.05) ? of([0, 2.5, null]) : of([1, 2, 2, 3, whole(1, 6)]);
    return {
      group: `group ${row + 1}`,
      n,
      l:
        n === 1
          ? of([null, 0, 0, over(0.2, 3)])
          : of([over(0.9, 12), between(1, 5), 96 * 0.0254, 40 * 0.0254]),
      s: chance(0.5) ? 100 / count : odd(0.2) ? null : between(2, 60),
    };
  });
  const most = between(9, 14);
  const fastest = between(40, 90);
  const steps = odd(0.1) ? 1 : whole(2, 7);
  const speeds = Array.from({ length: steps }, (_, row): Row => {
    const at = steps === 1 ? 0 : (most * row) / (steps - 1);
    const speed = odd(0.02) ? 0 : fastest / (1 + at / 4);
    return { R: at, v_l: speed, v_e: speed * 1.1 };
  });
  const factors = Array.from({ length: whole(0, 6) }, (_, row): Row => {
    return {
      condition: `condition ${row + 1}`,
      dt: odd(0.05) ? -2 : of([null, -0.04, 0.02, between(-0.05, 0.05)]),
    };
  });
  const extra = Array.from({ length: whole(0, 6) }, (_, row): Row => {
    return {
      line: `line ${row + 1}`,
      qty: odd(0.03) ? null : between(0, 40),
      per: 'each',
      price: chance(0.9) ? between(-500, 20_000) : between(-200_000, 0),
    };
  });
  const ops = Array.from({ length: of([0, 1, 2, 3, whole(1, 9)]) }, (_, row): Row => {
    const by = of(['bank', 'loose', 'passes']);
    return {
      op: `operation ${row + 1}`,
      by,
      R_b: by === 'bank' && !odd(0.03) ? over(10, 600) : of([null, 0, 80]),
      R_l: by === 'loose' && !odd(0.03) ? over(10, 600) : of([null, 0, 80]),
      b_w: by === 'passes' && !odd(0.03) ? between(0.6, 4) : of([null, 1]),
      v_w: by === 'passes' ? between(1, 12) : of([null, 5]),
      h_w: by === 'passes' ? between(80, 500) : of([null, 200]),
      n_w: by === 'passes' && !odd(0.03) ? whole(1, 12) : of([null, 0, 4]),
      k_1: odd(0.03) ? of([0, 75]) : of([null, 1, between(0.5, 1)]),
      k_2: of([null, 1, between(0.5, 1.2)]),
      k_3: of([null, between(0.3, 1.2)]),
      n: odd(0.03) ? 0 : of([null, 1, whole(1, 4)]),
      c: odd(0.1) ? of([null, 0]) : between(60, 300),
    };
  });
  return {
    'fill.ops': ops,
    'swell.materials': materials,
    'quantity.takeoff': odd(0.03) ? [] : takeoff,
    'breaking.works': works,
    'haul.route': route,
    'haul.groups': groups,
    'haul.speeds': speeds,
    'haul.factors': factors,
    'cost.extra': extra,
    'cost.ranges': parts
      .filter(() => chance(0.96))
      .map((part): Row => {
        const sure = chance(0.15);
        return {
          part,
          lo: sure ? of([null, 100]) : between(20, 100),
          hi: sure ? null : of([100, between(100, 250)]),
        };
      }),
  };
}
