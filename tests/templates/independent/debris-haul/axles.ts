import type { Drawn, Verdict, Worked } from '../program.ts';
import { above, cell, count, num, part, rowsOf, sum, text, where, within } from './arithmetic.ts';

const pound = 0.000_453_592_37;
const foot = 0.3048;

/** What a law has for a gross mass, for one axle and for a group of them, t. */
interface Law {
  readonly legal: number;
  readonly axle: number;
  /** So many axles the gross mass is for. */
  readonly wanted: number;
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

/**
 * 23 CFR 658.17, Michigan Vehicle Code 257.722, the Canadian memorandum of 1988, Directive 96/53/EC, the Swedish class BK4
 * and the Finnish decree of 2013; a law without its name: a quarter above 40 t at most; private ground: what it bears.
 */
function lawOf(name: string, line: (of: string) => number): Law {
  const axles = Math.floor(line('n_a'));
  const driven = 11.5;
  const european = { axle: driven, group: byDirective(driven), wanted: 2 };
  const each = (axle: number) => ({ axle, group: (group: Group) => group.axles * axle, wanted: 2 });
  const laws: Readonly<Record<string, Law>> = {
    'United States': {
      legal: 80_000 * pound,
      axle: 20_000 * pound,
      wanted: 2,
      group: (group) =>
        group.axles >= 2 && group.length <= 96 * 0.0254 + 1e-12
          ? 34_000 * pound
          : Math.min(group.axles * 20_000 * pound, byBridgeFormula(group)),
    },
    Michigan: {
      legal: 164_000 * pound,
      axle: 18_000 * pound,
      wanted: 11,
      group: ({ axles: own, apart }) =>
        own * (own === 1 || apart >= 9 * foot - 1e-12 ? 18_000 : 13_000) * pound + 0 * apart,
    },
    Canada: {
      legal: 63.5,
      axle: 9.1,
      wanted: 8,
      group: ({ axles: own, length }) => (own >= 3 ? canadianTridem(length) : own === 2 ? 17 : 9.1) + 0 * own,
    },
    'European Union': { ...european, legal: byNumber[Math.min(axles, 5) - 2] ?? Number.NaN },
    // 74 t take seven axles of 11.5 t.
    Sweden: { ...european, legal: 74, wanted: 7 },
    Finland: { ...european, legal: 76, wanted: 9 },
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
  const law = lawOf(name, line);
  const groups = rowsOf(drawn, 'haul.groups').map((row) => {
    const [axles, length, share] = [count(num(row.n, 1)), num(row.l, 0), part(row.s)];
    const apart = length / Math.max(1, axles - 1);
    const legal = law.group({ axles, length, apart });
    const load = share * gross;
    return { axles, length, share, apart, legal, load, used: load / above(legal) };
  });
  const all = sum(groups.map(({ axles }) => axles));
  const shares = sum(groups.map(({ share }) => share)) * 100;
  const hardest = groups.length > 0 ? Math.max(...groups.map(({ used }) => used)) : Number.NaN;
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
    'haul.n_w': law.wanted,
    'haul.c_na': where(volume, within(law.wanted, Math.floor(line('n_a')))),
    'haul.W_br': cell(byFormula),
    'haul.c_br': isFederal ? where(volume, within(gross, byFormula)) : { verdict: 'does not apply' },
    [`${table}.N`]: groups.map(({ axles }) => cell(axles)),
    [`${table}.d`]: groups.map(({ apart }) => cell(apart)),
    [`${table}.W_b`]: groups.map((group) => cell(byBridgeFormula(group))),
    [`${table}.W_2`]: groups.map(({ apart }) => cell(tandem(apart))),
    [`${table}.W_3`]: groups.map(({ apart }) => cell(tridem(apart))),
    [`${table}.W_c`]: groups.map(({ length }) => cell(canadianTridem(length))),
    [`${table}.W_g`]: groups.map(({ legal }) => cell(legal)),
    [`${table}.m`]: groups.map(({ load }) => cell(load)),
    [`${table}.u_i`]: groups.map(({ used }) => cell(used)),
    'haul.u_g': cell(hardest),
    'haul.c_gr': where(volume, within(hardest, 1)),
    'haul.n_g': cell(all),
    'haul.c_gn': where(volume, same),
    'haul.s_g': cell(shares),
    'haul.c_gs': where(volume, within(99, shares)),
  };
}
