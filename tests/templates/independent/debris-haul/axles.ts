import type { Drawn, Verdict, Worked } from '../program.ts';
import { above, cell, count, exceeds, num, part, rowsOf, sum, text, where, within } from './arithmetic.ts';

const pound = 0.000_453_592_37;
const foot = 0.3048;

/** What a law has for a gross mass, for one axle and for a group of them, t. */
interface Law {
  readonly legal: number;
  readonly axle: number;
  /** Fewest axles that it has the gross mass of the truck for. */
  readonly wanted: number;
  /** Axles stand together within so many metres, by their number. */
  readonly reach: (axles: number) => number;
  readonly group: (group: Group) => number;
}

/** Axles that stand together: how many, over what length, and how far from one another, m. */
interface Group {
  readonly axles: number;
  readonly length: number;
  readonly apart: number;
}

/** 23 CFR 658.17: its table goes by 500 lb, and has the lower where the formula lies just between two. */
function byBridgeFormula({ axles, length }: Pick<Group, 'axles' | 'length'>): number {
  const gaps = Math.max(1, axles - 1);
  const kips = (length / foot) * (axles / gaps) + 12 * axles + 36;
  return Math.ceil(kips - 0.5 - 1e-9 * kips) * 500 * pound;
}

/** 23 CFR 658.5: one axle is what stands within 40 in, a tandem what stands within 96 in. */
function federal(group: Group): number {
  const single = 20_000 * pound;
  if (Number.isNaN(group.axles)) return Number.NaN;
  const within = (inches: number) => group.length <= inches * 0.0254 + 1e-12;
  if (group.axles === 1 || within(40)) return single;
  return within(96) ? 34_000 * pound : Math.min(group.axles * single, byBridgeFormula(group));
}

/** Directive 96/53/EC, Annex I, 3.1 to 3.5, of tandems and of three axles and more, by the metres between them. */
function byDirective(axle: number): Law['group'] {
  return ({ axles, apart }) => {
    if (Number.isNaN(axles)) return Number.NaN;
    if (axles < 2) return axle;
    return axles < 3 ? tandem(apart) : tridem(apart);
  };
}

function tandem(apart: number): number {
  const steps = [
    [1.8, 20],
    [1.3, 18],
    [1, 16],
  ] as const;
  return steps.find(([from]) => apart >= from - 1e-12)?.[1] ?? (Number.isNaN(apart) ? Number.NaN : 11);
}

function tridem(apart: number): number {
  if (Number.isNaN(apart)) return Number.NaN;
  return apart > 1.3 + 1e-12 ? 24 : 21;
}

/** The Canadian memorandum of 1988: by the length of the group. */
function canadianTridem(length: number): number {
  if (Number.isNaN(length)) return Number.NaN;
  if (length >= 3.6 - 1e-12) return 24;
  return length >= 3 - 1e-12 ? 23 : 21;
}

/** Gross mass of trucks of two, three and four axles by Directive 96/53/EC, Annex I, 2.2 and 2.3; of five and more 40 t. */
const byNumber: readonly number[] = [18, 26, 32, 40];

/** Finnish decree 407/2013: up to so many tonnes on so many axles. */
const finnish: ReadonlyArray<readonly [number, number]> = [
  [44, 2],
  [53, 6],
  [60, 7],
  [68, 8],
];

function least(steps: ReadonlyArray<readonly [number, number]>, beyond: number, gross: number): number {
  if (Number.isNaN(gross)) return Number.NaN;
  return steps.find(([most]) => !exceeds(gross, most))?.[1] ?? beyond;
}

/** One axle within `one`, two within `two`, of more each within `next` of the one before it. */
function reaching(one: number, two: number, next: number): Law['reach'] {
  return (axles) => {
    if (axles === 1) return one;
    return axles === 2 ? two : (axles - 1) * next;
  };
}

/**
 * 23 CFR 658.17, Michigan Vehicle Code 257.722, the Canadian memorandum of 1988, Directive 96/53/EC, the Swedish class BK4
 * and the Finnish decree of 2013; a law without its name: a quarter above 40 t at most; private ground: what it bears.
 */
function lawOf(name: string, gross: number, line: (of: string) => number): Law {
  const axles = Math.floor(line('n_a'));
  const driven = 11.5;
  const spread = reaching(1, 2.5, 1.8);
  const european = { axle: driven, group: byDirective(driven), wanted: 2, reach: reaching(1, 2.5, 1.4) };
  const each = (axle: number) => ({
    axle,
    group: (group: Group) => group.axles * axle,
    wanted: 2,
    reach: spread,
  });
  const laws: Readonly<Record<string, Law>> = {
    'United States': {
      legal: 80_000 * pound,
      axle: 20_000 * pound,
      wanted: 2,
      group: federal,
      reach: reaching(40 * 0.0254, 10 * foot, 6 * foot),
    },
    Michigan: {
      legal: 164_000 * pound,
      axle: 18_000 * pound,
      wanted: 2,
      reach: reaching(40 * 0.0254, 9 * foot, 6 * foot),
      group: ({ axles: own, apart }) =>
        own * (own === 1 || apart >= 9 * foot - 1e-12 ? 18_000 : 13_000) * pound + 0 * apart,
    },
    Canada: {
      legal: 63.5,
      axle: 9.1,
      wanted: least([[56.5, 2]], 8, gross),
      reach: (own) => (own > 2 ? 3.7 : own === 2 ? 1.85 : 1 + 0 * own),
      group: ({ axles: own, length }) => (own >= 3 ? canadianTridem(length) : own === 2 ? 17 : 9.1) + 0 * own,
    },
    'European Union': { ...european, legal: byNumber[Math.min(axles, 5) - 2] ?? Number.NaN },
    Sweden: { ...european, legal: 74, reach: spread },
    Finland: { ...european, legal: 76, wanted: least(finnish, 9, gross), reach: spread },
    'other law': { ...european, legal: Math.min(50, line('W_s')) },
    permit: { legal: line('W_p'), ...each(line('W_pa')) },
  };
  return laws[name] ?? { legal: line('W_m'), ...each(line('W_ga')) };
}

/** Holds a truck of some gross mass, in t, to the law on its axles; `volume` is what there is to haul. */
export function workAxles(drawn: Drawn, gross: number, volume: number): Worked {
  const { lines } = drawn;
  const line = (name: string) => num(lines[`haul.${name}`]);
  const name = text(lines['haul.law']);
  const law = lawOf(name, gross, line);
  const rows = rowsOf(drawn, 'haul.groups');
  const carried = sum(rows.map((row) => part(row.s)));
  const groups = rows.map((row) => {
    const [axles, length, share] = [count(num(row.n, 1)), num(row.l, 0), part(row.s)];
    const apart = length / Math.max(1, axles - 1);
    const legal = law.group({ axles, length, apart });
    // What the shares leave over rests on the groups as they share it.
    const load = (gross * share) / Math.min(1, carried);
    const reach = law.reach(axles);
    return {
      axles,
      length,
      share,
      apart,
      legal,
      load,
      used: load / above(legal),
      reach,
      long: length / reach,
    };
  });
  const all = sum(groups.map(({ axles }) => axles));
  const [first] = groups;
  const even = first ? (first.share * all) / (first.axles * carried) : Number.NaN;
  const most = (of: readonly number[]) => (of.length > 0 ? Math.max(...of) : Number.NaN);
  const hardest = most(groups.map(({ used }) => used));
  const longest = most(groups.map(({ long }) => long));
  const byFormula = byBridgeFormula({ axles: line('n_a'), length: line('L_x') });
  const isFederal = name === 'United States';
  const same: Verdict = Number.isNaN(all + line('n_a'))
    ? { verdict: 'refused' }
    : { verdict: all === line('n_a') ? 'holds' : 'fails' };
  const table = 'haul.groups';
  return {
    'haul.W_l': cell(law.legal),
    'haul.W_a': cell(law.axle),
    'haul.W_x': cell(Math.floor(line('n_a')) * law.axle),
    'haul.c_Wl': where(volume, within(line('W_m'), law.legal)),
    'haul.c_ax': where(volume, within(gross, Math.floor(line('n_a')) * law.axle)),
    'haul.n_w': cell(law.wanted),
    'haul.c_na': where(volume, within(law.wanted, Math.floor(line('n_a')))),
    'haul.W_br': cell(byFormula),
    'haul.c_br': isFederal ? where(volume, within(gross, byFormula)) : { verdict: 'does not apply' },
    [`${table}.N`]: groups.map(({ axles }) => cell(axles)),
    [`${table}.d`]: groups.map(({ apart }) => cell(apart)),
    [`${table}.l_x`]: groups.map(({ reach }) => cell(reach)),
    [`${table}.u_l`]: groups.map(({ long }) => cell(long)),
    [`${table}.W_b`]: groups.map((group) => cell(byBridgeFormula(group))),
    [`${table}.W_2`]: groups.map(({ apart }) => cell(tandem(apart))),
    [`${table}.W_3`]: groups.map(({ apart }) => cell(tridem(apart))),
    [`${table}.W_c`]: groups.map(({ length }) => cell(canadianTridem(length))),
    [`${table}.W_g`]: groups.map(({ legal }) => cell(legal)),
    [`${table}.m`]: groups.map(({ load }) => cell(load)),
    [`${table}.u_i`]: groups.map(({ used }) => cell(used)),
    'haul.u_g': cell(hardest),
    'haul.c_gr': where(volume, within(hardest, 1)),
    'haul.u_gl': cell(longest),
    'haul.c_gl': where(volume, within(longest, 1)),
    'haul.n_g': cell(all),
    'haul.c_gn': where(volume, same),
    'haul.s_g': cell(carried * 100),
    'haul.c_gs': where(volume, within(Math.abs(carried - 1), 0.01)),
    'haul.s_e': cell(even),
    'haul.c_st': where(volume, within(0.6, even)),
  };
}
