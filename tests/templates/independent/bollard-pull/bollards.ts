import type { Verdict, Worked } from '../program.ts';
import { type Entries, largestOf, positive, rowOfLargest, sumOf } from './entries.ts';
import type { Line } from './lines.ts';
import { type Combination, tonneForce } from './load.ts';
import { ratings } from './published.ts';
import type { Pulls } from './safety.ts';
import { doesNotApply, judge, judgeTruth, refused } from './verdicts.ts';

/** A bollard of the table, with the lines that land on it; rating in kN. */
interface Bollard {
  readonly name: string;
  readonly rating: number;
  readonly landed: readonly number[];
}

/** A pull on a bollard, kN: along the berth, off it, up. */
interface Pull {
  readonly along: number;
  readonly off: number;
  readonly up: number;
}

/** Works out what each bollard must be rated for and what pulls at it; and the pull its bolts are designed for, kN. */
export function workBollards(
  entries: Entries,
  lines: readonly Line[],
  pulls: Pulls,
  nominal: number,
): { readonly boltPull: number | undefined; readonly worked: Worked } {
  const { number, text } = entries;
  const bollards = (entries.rows('bollard.bollards') ?? []).map((row): Bollard => {
    const name = row.text('bollard');
    return {
      name,
      rating: positive(row.number('rate')) * tonneForce,
      landed: lines.flatMap(({ bollard }, at) => (bollard === name ? [at] : [])),
    };
  });
  const parts = bollards.map(({ landed }) => sumOf(landed, (at) => lines[at]?.parts ?? 0));
  // A line of unknown strength leaves every sum of strengths unknown.
  const unknown = sumOf(lines, ({ dry }) => 0 * dry);
  const all = bollards.map(
    ({ landed }) => unknown + sumOf(landed, (at) => (lines[at]?.parts ?? 0) * (lines[at]?.dry ?? 0)),
  );
  const largest = bollards.map(({ landed }) =>
    landed.length === 0 ? 0 : unknown + largestOf(landed, (at) => lines[at]?.dry ?? 0),
  );
  const states = text('bollard.pulls') === 'intact' ? pulls.intact : pulls.lost;
  const pulled =
    states && bollards.map((bollard) => states.map((tensions) => pullOn(bollard, lines, tensions)));
  const most = pulled?.map((each) => largestOf(each, sizeOf));
  const wanted = wantedBy(entries, { parts, all, largest, most, nominal });
  const use = wanted?.map((rating, row) => rating / (bollards[row]?.rating ?? Number.NaN));
  const governing = use && rowOfLargest(use);
  const worst = use && largestOf(use, (one) => one);
  const hasUnknown = Boolean(use?.some(Number.isNaN));
  return {
    // One pattern of bolts under all bollards; anchors outlast a bollard: its rating where that is more than what is wanted.
    boltPull:
      wanted && Math.max(...wanted, ...bollards.map(({ rating }) => (Number.isNaN(rating) ? 0 : rating))),
    worked: {
      'bollard.bollards.n': parts,
      'bollard.bollards.R_1': all,
      'bollard.bollards.M_1': largest,
      ...workAnyLine(bollards, largest),
      ...workParts(text('bollard.route'), parts, number('bollard.n_p')),
      ...workFloors(entries),
      ...workLanding(lines, bollards, parts),
      ...(wanted &&
        use &&
        worst !== undefined && {
          'bollard.bollards.R_w': wanted,
          'bollard.bollards.U_b': use,
          'bollard.U_m': worst,
          'bollard.c_rate': judgeMost(worst),
          ...(wanted.every((one) => !isOnRating(one)) && { 'bollard.bollards.s_w': wanted.map(nextRating) }),
          ...(hasUnknown
            ? { 'bollard.b_gov': null, 'bollard.R_gov': null }
            : governing !== undefined && {
                'bollard.b_gov': bollards[governing]?.name ?? null,
                'bollard.R_gov': wanted[governing] ?? null,
              }),
        }),
      ...(pulled &&
        most &&
        workPulls(bollards, pulled, most, {
          nominal,
          limit: number('bollard.t_lim'),
          combinations: pulls.combinations,
        })),
    },
  };
}

function pullOn({ landed }: Bollard, lines: readonly Line[], tensions: readonly number[]): Pull {
  // Where the lines cannot hold the ship no pull is known, on no bollard.
  const held = tensions.some(Number.isNaN) ? Number.NaN : 0;
  const sum = (of: (line: Line) => number): number =>
    held +
    sumOf(landed, (at) => {
      const line = lines[at];
      return line ? of(line) * (tensions[at] ?? 0) : 0;
    });
  return {
    along: -sum(({ along }) => along),
    off: sum(({ square }) => square),
    up: sum(({ rise }) => rise),
  };
}

const noPull: Pull = { along: Number.NaN, off: Number.NaN, up: Number.NaN };
const sizeOf = ({ along, off, up }: Pull): number => Math.hypot(along, off, up);
const steepnessOf = ({ along, off, up }: Pull): number =>
  (Math.atan2(up, Math.hypot(along, off)) * 180) / Math.PI;

function judgeMost(use: number): Verdict {
  return Number.isNaN(use) ? refused : judge(use, 1);
}

/** The rating wanted of each bollard by the rule that was chosen, kN; undefined where the sharing leaves it open. */
function wantedBy(
  { number, text }: Entries,
  of: {
    readonly parts: readonly number[];
    readonly all: readonly number[];
    readonly largest: readonly number[];
    readonly most: readonly number[] | undefined;
    readonly nominal: number;
  },
): readonly number[] | undefined {
  switch (text('bollard.route')) {
    case 'MBL':
      return of.all;
    case 'brake':
      return of.all.map((strength) => (number('bollard.p_br') / 100) * strength);
    case 'hooks':
      return of.largest.map((strength, row) => {
        const count = of.parts[row] ?? 0;
        return count === 0 ? 0 : 1.2 * strength * (1 + 0.75 * (count - 1));
      });
    case 'UFC':
      return of.largest.map((strength) => number('bollard.n_p') * number('bollard.f_p') * strength);
    case 'analysis':
      return of.most?.map((pull) => number('bollard.γ_l') * pull);
    case 'nominal':
      return of.all.map(() => of.nominal);
    default:
      throw new Error('the rule of the rating was not drawn');
  }
}

const isOnRating = (force: number): boolean =>
  ratings.some((size) => Math.abs(force / (size * tonneForce) - 1) < 1e-9);
const nextRating = (force: number): number =>
  ratings.find((size) => size * tonneForce >= force) ?? Number.NaN;

/** OCIMF Mooring Equipment Guidelines, 2nd ed. (1997), 1.12.2: no weaker than the largest rope that is expected on it. */
function workAnyLine(bollards: readonly Bollard[], largest: readonly number[]): Worked {
  const use = bollards.map(({ rating }, row) => (largest[row] ?? Number.NaN) / rating);
  return { 'bollard.bollards.U_1': use, 'bollard.c_any': judgeMost(largestOf(use, (one) => one)) };
}

/** OCIMF sets brakes to render at 60 %; EAU has 1.3 on the pull of a line: both from memory, each of its own route. */
function workFloors({ number, text, stated }: Entries): Worked {
  const route = text('bollard.route');
  const brake = judge(stated('bollard.p_n') ?? 60, number('bollard.p_br'));
  const factor = judge(stated('bollard.γ_n') ?? 1.3, number('bollard.γ_l'));
  return {
    'bollard.c_br': route === 'brake' ? brake : doesNotApply,
    'bollard.c_γl': route === 'analysis' ? factor : doesNotApply,
  };
}

/** UFC 4-159-03 (2005), Table 3-7 note: three parts of the largest line, or as many as there are on the fullest bollard. */
function workParts(route: string, parts: readonly number[], counted: number): Worked {
  const toCount = Math.max(3, ...parts);
  return {
    'bollard.n_m': toCount,
    'bollard.c_np': route === 'UFC' ? judge(toCount, counted) : doesNotApply,
  };
}

/** Whether each line of the plan lands on a bollard of the table. */
function workLanding(lines: readonly Line[], bollards: readonly Bollard[], parts: readonly number[]): Worked {
  const names = new Set(bollards.map(({ name }) => name));
  const planned = sumOf(lines, (line) => line.parts);
  const once = { 'bollard.c_once': judgeTruth(names.size === bollards.length) };
  if (names.size < bollards.length) return once;
  const landed = sumOf(parts, (count) => count);
  return {
    ...once,
    'bollard.n_land': landed,
    'bollard.n_line': planned,
    'bollard.c_land': Number.isNaN(planned)
      ? refused
      : {
          ...judgeTruth(lines.every(({ bollard }) => names.has(bollard))),
          ...(landed > 0 && { utilisation: planned / landed }),
        },
  };
}

/** The pulls of the sharing: the largest over the states that count, and the components where only one does. */
function workPulls(
  bollards: readonly Bollard[],
  pulled: readonly (readonly Pull[])[],
  most: readonly number[],
  {
    nominal,
    limit,
    combinations,
  }: {
    readonly nominal: number;
    readonly limit: number;
    readonly combinations: readonly Combination[];
  },
): Worked {
  const largest = Math.max(...most);
  // Where two states pull alike either may be told.
  const rows = pulled.map((each) => rowOfLargest(each.map(sizeOf)));
  const single = rows.every((row) => row !== undefined)
    ? pulled.map((each, at) => each[rows[at] ?? 0] ?? noPull)
    : undefined;
  const up = largestOf(pulled.flat(), (pull) => pull.up);
  const hasPull = pulled.every((each) => each.every((pull) => sizeOf(pull) > 1e-9));
  const steepest = largestOf(pulled.flat(), steepnessOf);
  return {
    'bollard.bollards.R': most,
    ...(single && {
      'bollard.bollards.H': single.map(({ along, off }) => Math.hypot(along, off)),
      'bollard.bollards.P_x': single.map(({ along }) => along),
      'bollard.bollards.P_y': single.map(({ off }) => off),
      'bollard.bollards.P_z': single.map((pull) => pull.up),
      ...(hasPull && {
        'bollard.bollards.β': single.map(({ along, off }) => (Math.atan2(along, off) * 180) / Math.PI),
        'bollard.bollards.τ_b': single.map(steepnessOf),
      }),
    }),
    ...workDirections(most, rows, combinations),
    'bollard.R_max': largest,
    'bollard.V_max': up,
    ...(Number.isNaN(up)
      ? { 'bollard.τ_bm': null, 'bollard.c_up': refused }
      : hasPull && { 'bollard.τ_bm': steepest, 'bollard.c_up': judge(steepest, limit) }),
    'bollard.c_pull': judgeMost(
      largestOf(bollards, ({ rating }) => rating * 0) +
        Math.max(...most.map((pull, row) => pull / (bollards[row]?.rating ?? Number.NaN))),
    ),
    'bollard.r_nom': largest / nominal,
  };
}

/** Where wind and current come from when a bollard is pulled hardest, where one combination alone does that. */
function workDirections(
  most: readonly number[],
  rows: readonly (number | undefined)[],
  combinations: readonly Combination[],
): Worked {
  const of = (row: number | undefined): Combination | undefined => combinations[row ?? -1];
  const each = rows.flatMap((row) => of(row) ?? []);
  const hardest = rowOfLargest(most);
  const worst = hardest === undefined ? undefined : of(rows[hardest]);
  return {
    ...(each.length === rows.length && {
      'bollard.bollards.case_b': each.map(({ name }) => name),
      'bollard.bollards.w_b': each.map(({ windFrom }) => windFrom),
      'bollard.bollards.v_b': each.map(({ currentFrom }) => currentFrom),
    }),
    ...(worst && {
      'bollard.case_R': worst.name,
      'bollard.w_R': worst.windFrom,
      'bollard.v_R': worst.currentFrom,
    }),
  };
}
