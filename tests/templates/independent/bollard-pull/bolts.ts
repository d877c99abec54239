import type { Verdict, Worked } from '../program.ts';
import { type Plate, spread, turning } from './bolt-directions.ts';
import { type Entries, isCount, largestOf, positive, sumOf } from './entries.ts';
import { doesNotApply, judge, judgeTruth, refused } from './verdicts.ts';

/** One row of bolts: from the toe in m, how many, and from the first to the last in m. */
interface BoltRow {
  readonly from: number;
  readonly count: number;
  readonly width: number;
}

/** What the pull does to the bolts at one angle above the horizontal: kN, kN·m. */
interface Actions {
  readonly uplift: number;
  readonly shear: number;
  readonly byCentroid: readonly number[];
  readonly byToe: readonly number[];
  readonly allByToe: number;
  readonly tension: number;
  readonly aboutCentroid: number;
  readonly aboutToe: number;
}

/** Works out the anchor bolts of the bollard that governs, of so much pull in kN. */
export function workBolts(entries: Entries, pull: number): Worked {
  const { number, text } = entries;
  const rows = (entries.rows('bolt.bolts') ?? []).map(
    (row): BoltRow => ({ from: row.number('y'), count: row.number('n_r'), width: row.number('b_r') }),
  );
  const count = sumOf(rows, (row) => row.count);
  const centroid = sumOf(rows, (row) => row.count * row.from) / count;
  const aboutCentroidOf = sumOf(rows, (row) => row.count * (row.from - centroid) ** 2);
  const toeSquares = sumOf(rows, (row) => row.count * row.from ** 2);
  // One row takes no moment about itself; what is left of it then is rounding.
  const squares = aboutCentroidOf > 1e-9 * toeSquares ? aboutCentroidOf : 0;
  const factored = number('bolt.γ') * pull;
  const angle = number('bollard.t_lim');
  const isToe = text('bolt.way') === 'toe';
  const bolt = workBolt(entries);

  const actionsAt = (degrees: number): Actions => {
    const [along, uplift] = [factored * cosineOf(degrees), factored * sineOf(degrees)];
    const atBase = along * number('bolt.h');
    const aboutCentroid = atBase + uplift * (number('bolt.a') - centroid);
    const aboutToe = atBase + uplift * number('bolt.a');
    const byCentroid = rows.map(
      ({ from }) => uplift / count + (aboutCentroid * (from - centroid)) / positive(squares),
    );
    const byToe = rows.map(({ from }) => (aboutToe * from) / positive(toeSquares));
    return {
      uplift,
      byCentroid,
      byToe,
      aboutCentroid,
      aboutToe,
      shear: along / count,
      allByToe: sumOf(rows, ({ from, count: some }) => some * ((aboutToe * from) / positive(toeSquares))),
      tension: largestOf(isToe ? byToe : byCentroid, (one) => one),
    };
  };
  const now = actionsAt(angle);
  const use = bolt.use(now.shear, now.tension);
  const anchor = useAnchor(entries, now.shear, now.tension);
  const isPlain = number('bolt.γ') === 1;
  return {
    'bolt.P': pull,
    'bolt.t': angle,
    'bolt.T': factored,
    ...(isPlain && {
      'bolt.H': factored * cosineOf(angle),
      'bolt.V': now.uplift,
      'bolt.M_b': factored * cosineOf(angle) * number('bolt.h'),
    }),
    'bolt.M_c': now.aboutCentroid,
    'bolt.M_t': now.aboutToe,
    'bolt.N': count,
    'bolt.y_m': centroid,
    'bolt.I_c': squares,
    'bolt.I_t': toeSquares,
    'bolt.bolts.z': rows.map(({ from }) => from - centroid),
    'bolt.bolts.T_c': now.byCentroid,
    'bolt.bolts.T_t': now.byToe,
    'bolt.S_t': now.allByToe,
    'bolt.C_t': now.allByToe - now.uplift,
    'bolt.F_t': now.tension,
    'bolt.F_v': now.shear,
    ...bolt.worked(now.shear, now.tension),
    ...(Number.isFinite(use) || Number.isNaN(use) ? { 'bolt.U': use } : {}),
    'bolt.U_l': anchor,
    ...(rows.every(({ count: some }) => isCount(some)) &&
      workTurned(entries, rows, { centroid, squares, factored, angle, use: bolt.use })),
    ...workSteel(entries, bolt.steel),
    'bolt.c_whole': judgeTruth(rows.every(({ count: some }) => isCount(some))),
    // Without compression at the toe the plate lifts off; only that way of sharing rests on it.
    'bolt.c_toe': isToe ? judgeToe(now) : doesNotApply,
  };
}

/** The bolts in whatever direction the pull is, and the places they stand at. */
function workTurned(
  entries: Entries,
  rows: readonly BoltRow[],
  {
    centroid,
    squares,
    factored,
    angle,
    use,
  }: {
    readonly centroid: number;
    readonly squares: number;
    readonly factored: number;
    readonly angle: number;
    readonly use: (shear: number, tension: number) => number;
  },
): Worked {
  const { number, text } = entries;
  const plate: Plate = {
    toe: number('bolt.a'),
    side: number('bolt.e_p'),
    turnsAbout: text('bolt.way') === 'toe' ? 'edges' : 'centroid',
  };
  const bolts = spread(rows);
  const group = turning(bolts, plate, centroid, squares);
  const height = number('bolt.h');
  const worst = (of: (shear: number, tension: number) => number): Verdict =>
    judgeUse(
      largestBetween((at) => {
        const [pull, uplift] = [factored * cosineOf(at), factored * sineOf(at)];
        return of(group.shear(pull), group.tension(pull, height, uplift));
      }, angle),
    );
  const [pull, uplift] = [factored * cosineOf(angle), factored * sineOf(angle)];
  const allBySide = group.allBySide(pull, height, uplift);
  const outer = Math.max(...bolts.map(({ beside }) => Math.abs(beside)));
  const isEdges = plate.turnsAbout === 'edges';
  return {
    'bolt.c_bolt': worst(use),
    'bolt.c_anchor': worst((shear, tension) => useAnchor(entries, shear, tension)),
    'bolt.I_x': group.alongSquares,
    'bolt.I_s': group.sideSquares,
    'bolt.S_s': allBySide,
    'bolt.r_m': group.furthest,
    'bolt.q_H': group.shear(1),
    ...(bolts.length > 1 && { 'bolt.s_min': group.nearest }),
    'bolt.b_m': outer,
    'bolt.places.x_k': bolts.map(({ beside }) => beside),
    'bolt.places.y_k': bolts.map(({ from }) => from),
    'bolt.c_edge': isEdges ? judgeToe({ uplift, allByToe: allBySide }) : doesNotApply,
    'bolt.c_plate': outer === 0 ? judgeTruth(true) : judge(outer, plate.side),
    ...workPlace(entries, rows, { centroid, outer, isEdges }),
    'bolt.c_space':
      bolts.length > 1
        ? judge((number('bolt.s_d') * positive(number('bolt.d'))) / 1000, group.nearest)
        : doesNotApply,
  };
}

/** Whether the plate is as near its bolts as a rigid plate must be, and the bollard stands among them. */
function workPlace(
  { number }: Entries,
  rows: readonly BoltRow[],
  {
    centroid,
    outer,
    isEdges,
  }: { readonly centroid: number; readonly outer: number; readonly isEdges: boolean },
): Worked {
  const froms = rows.map(({ from }) => from);
  const [first, last] = [Math.min(...froms), Math.max(...froms)];
  const beyond = 1000 * Math.max(number('bolt.e_p') - outer, first);
  const beside = Math.abs(number('bolt.a') - centroid);
  // EN 1993-1-8, Table 3.3: 4 t + 40 mm.
  const reach = judge(beyond, 4 * number('bolt.t_p') + 40);
  return {
    'bolt.o_p': beyond,
    'bolt.c_reach': !isEdges ? doesNotApply : beyond < 0 ? { verdict: 'holds' } : reach,
    'bolt.c_among': rows.length > 1 ? judge(beside, (last - first) / 2) : doesNotApply,
  };
}

const ksi = 6.894757293168361;
/** ASTM, from memory: yield and tensile strength, ksi. */
const grades: Readonly<Record<string, readonly [yielding: number, strength: number]>> = {
  'F1554 grade 36': [36, 58],
  'F1554 grade 55': [55, 75],
  'F1554 grade 105': [105, 125],
  A307: [36, 60],
  A325: [92, 120],
  A490: [130, 150],
};

/**
 * A bolt by its mark: the first figure of a class is a hundredth of its strength, the second the share of it at which it yields,
 * in tenths. EN 1993-1-8, Table 3.4, from memory: cold-formed and hardest classes shear at half of it on their threads.
 */
function gradeOf({ text, stated }: Entries): {
  readonly yielding: number;
  readonly strength: number;
  readonly strengthOfClass: number;
  readonly shear: number;
  readonly shearOfClass: number;
} {
  const mark = text('bolt.cl');
  const [hundreds = Number.NaN, tenths = Number.NaN] = mark.split('.').map(Number);
  const grade = grades[mark];
  const [yielding, strengthOfClass] = grade
    ? [grade[0] * ksi, grade[1] * ksi]
    : [hundreds * tenths * 10, hundreds * 100];
  const isBrittle = ['4.8', '5.8', '6.8', '10.9', 'A490'].includes(mark);
  const shearOfClass = isBrittle && text('bolt.threads') === 'in it' ? 0.5 : 0.6;
  return {
    yielding,
    strengthOfClass,
    strength: stated('bolt.f_ub') ?? strengthOfClass,
    shearOfClass,
    shear: stated('bolt.α_v') ?? shearOfClass,
  };
}

/** An anchor is as strong as the weaker of its concrete and its steel. */
function workSteel(entries: Entries, steel: { readonly tension: number; readonly shear: number }): Worked {
  const { number, text } = entries;
  const grade = gradeOf(entries);
  const isAisc = text('bolt.code') === 'AISC 360';
  // AISC 360, Table J3.2, from memory; a hundredth is rounding of the print.
  const strength = 1.01 * grade.strength;
  const inShear = text('bolt.threads') === 'in it' ? 0.45 : 0.563;
  return {
    'bolt.c_Fnt': isAisc ? judge(number('bolt.F_nt'), 0.75 * strength) : doesNotApply,
    'bolt.c_Fnv': isAisc ? judge(number('bolt.F_nv'), inShear * strength) : doesNotApply,
    'bolt.f_yb': grade.yielding,
    'bolt.f_ub': grade.strength,
    'bolt.α_v': grade.shear,
    'bolt.c_αv': isAisc ? doesNotApply : judge(grade.shear, grade.shearOfClass),
    'bolt.c_fub': judge(grade.strength, 1.001 * grade.strengthOfClass),
    'bolt.N_s': steel.tension,
    'bolt.V_s': steel.shear,
    'bolt.c_NR': within(number('bolt.N_R'), steel.tension),
    'bolt.c_VR': within(number('bolt.V_R'), steel.shear),
  };
}

/** An anchor of no resistance has no more than any steel. */
const within = (resistance: number, steel: number): Verdict =>
  resistance === 0 && steel >= 0 ? { verdict: 'holds' } : judge(resistance, steel);

/** A pull that neither lifts nor tilts the plate leaves it where it is. */
function judgeToe({ uplift, allByToe }: Pick<Actions, 'uplift' | 'allByToe'>): Verdict {
  return uplift === 0 && allByToe === 0 ? judgeTruth(true) : judge(uplift, allByToe);
}

const cosineOf = (degrees: number): number => (degrees === 90 ? 0 : Math.cos((degrees * Math.PI) / 180));
const sineOf = (degrees: number): number => Math.sin((degrees * Math.PI) / 180);

function judgeUse(use: number): Verdict {
  if (Number.isNaN(use)) return refused;
  return Number.isFinite(use) ? judge(use, 1) : { verdict: 'fails' };
}

/** The largest of a smooth use at any angle from the horizontal to the one given, to rounding. */
function largestBetween(use: (degrees: number) => number, last: number): number {
  const steps = 60;
  const at = (step: number): number => (last * step) / steps;
  const values = Array.from({ length: steps + 1 }, (_, step) => use(at(step)));
  if (values.some((value) => Number.isNaN(value))) return Number.NaN;
  const top = values.indexOf(Math.max(...values));
  let [low, high] = [at(Math.max(0, top - 1)), at(Math.min(steps, top + 1))];
  for (let cut = 0; cut < 100; cut += 1) {
    const [third, other] = [low + (high - low) / 3, high - (high - low) / 3];
    if (use(third) < use(other)) low = third;
    else high = other;
  }
  return Math.max(...values, use((low + high) / 2));
}

/** The bolt itself: its areas, its stresses, and how much of it is used by the rule that was chosen. */
function workBolt(entries: Entries): {
  readonly use: (shear: number, tension: number) => number;
  readonly steel: { readonly tension: number; readonly shear: number };
  readonly worked: (shear: number, tension: number) => Worked;
} {
  const { number, text } = entries;
  const diameter = positive(number('bolt.d'));
  const shank = (Math.PI * diameter ** 2) / 4;
  const thread = (Math.PI / 4) * atLeastZero(diameter - 0.9382 * number('bolt.p_th')) ** 2;
  const area = text('bolt.A_by') === 'metric thread' ? thread : 0.78 * shank;
  const grade = gradeOf(entries);
  const strength = grade.strength / number('bolt.γ_M2') / 1000;
  const shearResistance = grade.shear * strength * area;
  const tensionResistance = number('bolt.k_2') * strength * area;
  const [factor, tensile, shearing] = [number('bolt.φ'), number('bolt.F_nt'), number('bolt.F_nv')];

  /** AISC 360, J3.7: the tensile stress left beside a shear. */
  const leftOf = (shear: number): number =>
    Math.min(tensile, 1.3 * tensile - (tensile * ((shear * 1000) / shank)) / (factor * shearing));
  const rules: Readonly<Record<string, (shear: number, tension: number) => number>> = {
    // EN 1993-1-8, Table 3.4: both together, and tension alone.
    'EN 1993-1-8': (shear, tension) =>
      Math.max(
        shear / positive(shearResistance) + tension / (1.4 * positive(tensionResistance)),
        tension / positive(tensionResistance),
      ),
    'AISC 360': (shear, tension) => {
      const left = leftOf(shear);
      const inShear = (shear * 1000) / shank / positive(factor * shearing);
      if (left <= 0 && !Number.isNaN(tension)) return Number.POSITIVE_INFINITY;
      return Math.max(inShear, (tension * 1000) / shank / (factor * left));
    },
    linear: (shear, tension) => anchorUse(number, shear, tension),
  };
  const rule = rules[text('bolt.code')];
  if (!rule) throw new Error('the rule of the bolt was not drawn');
  return {
    // A row that is pressed down makes no room for shear.
    use: (shear, tension) => rule(shear, atLeastZero(tension)),
    steel:
      text('bolt.code') === 'AISC 360'
        ? { tension: (factor * tensile * shank) / 1000, shear: (factor * shearing * shank) / 1000 }
        : { tension: tensionResistance, shear: shearResistance },
    worked: (shear, tension) => ({
      'bolt.A_b': shank,
      'bolt.A_s': area,
      'bolt.f_v': (shear * 1000) / shank,
      'bolt.f_t': (tension * 1000) / area,
      'bolt.f_p': (shear * 1000) / (diameter * positive(number('bolt.t_p'))),
      'bolt.F_vR': shearResistance,
      'bolt.F_tR': tensionResistance,
      'bolt.f_ta': (tension * 1000) / shank,
      "bolt.F'_nt": leftOf(shear),
    }),
  };
}

const atLeastZero = (value: number): number => Math.max(value, 0);

/** ACI 318, 17.8: neither part above its resistance, and their sum not above the limit. */
function anchorUse(number: Entries['number'], shear: number, tension: number): number {
  const [inTension, inShear] = [tension / positive(number('bolt.N_R')), shear / positive(number('bolt.V_R'))];
  return Math.max(inTension, inShear, (inTension + inShear) / positive(number('bolt.lim_l')));
}

function useAnchor({ number }: Entries, shear: number, tension: number): number {
  return anchorUse(number, shear, atLeastZero(tension));
}
