import type { Cell, Worked } from '../program.ts';
import { type Entries, largestOf, rowOfLargest, sumOf } from './entries.ts';
import { type Fender, workFenders } from './fenders.ts';
import type { Force } from './flow.ts';
import { type Line, sharesAlong } from './lines.ts';
import type { Loads } from './load.ts';
import { workMovement } from './movement.ts';
import { type Intact, idle, type Pulls, safetyOf, wantedWithLoss } from './safety.ts';
import { countsAlong, fromSwayOf, holdShip, type Rule, type Share, type State } from './sharing.ts';
import { doesNotApply, judge, judgeSafety, judgeTruth } from './verdicts.ts';

/** What a combination comes to with all lines or with one lost: undefined where the lines do not hold the ship. */
type Held = State | undefined;

/** All combinations with all lines and with each lost in turn, the lines taking tension only. */
export function workCombinations(
  entries: Entries,
  {
    lines,
    fenders,
    use,
  }: {
    readonly lines: readonly Line[];
    readonly fenders: readonly Fender[];
    readonly use: readonly boolean[];
  },
  rule: Rule,
  { combinations, shown }: Loads,
  intact: Intact,
  between: number,
): { readonly pulls: Pulls; readonly worked: Worked } {
  const { number } = entries;
  const open = { pulls: { intact: undefined, lost: undefined, combinations: [] }, worked: {} };
  const names = new Set(lines.map(({ name }) => name));
  const forces = combinations.map(({ force }) => force);
  const hold = (force: Force, lost?: number): Held | 'unsettled' =>
    holdShip(
      lines,
      use.map((isUsed, row) => isUsed && row !== lost),
      rule,
      force,
      { fenders, rounds: number('moor.n_s') },
    );
  const all = forces.map((force) => hold(force));
  const lost = forces.map((force) => lines.map((_, row) => hold(force, row)));
  if (names.size < lines.length) return open;
  if ([...all, ...lost.flat()].some((state) => state === 'unsettled')) return open;
  const states = all as readonly Held[];
  const losses = lost as readonly (readonly Held[])[];

  const safeties = states.map((state, row) =>
    // Where the sharing gives no shares in one combination it gives none in another.
    row === shown || Number.isNaN(intact.least) ? (intact.least ?? 0) : leastSafety(lines, use, state),
  );
  const alongs = states.map((state, row) =>
    row === shown ? intact.leastAlong : leastAlong(lines, use, rule, forces[row] ?? noForce, state),
  );
  const least = Math.min(...safeties);
  const worst = rowOfLargest(safeties.map((safety) => -safety));
  const least2 = alongs.some((one) => one === undefined) ? undefined : Math.min(...alongs.map(Number));
  const tensionsOf = (state: Held): readonly number[] => state?.tensions ?? lines.map(() => Number.NaN);
  return {
    pulls: {
      intact: states.map(tensionsOf),
      lost: [...states, ...losses.flat()].map(tensionsOf),
      combinations: [...combinations, ...combinations.flatMap((one) => lines.map(() => one))],
    },
    worked: {
      'moor.cases.X_c': forces.map(({ along }) => along),
      'moor.cases.Y_c': forces.map(({ off }) => off),
      'moor.cases.M_c': forces.map(({ moment }) => moment),
      'moor.cases.case': combinations.map(({ name }) => name),
      'moor.cases.a_w': combinations.map(({ windFrom }) => windFrom),
      'moor.cases.a_c': combinations.map(({ currentFrom }) => currentFrom),
      ...(safeties.every((one) => Number.isNaN(one) || one < idle) && {
        'moor.cases.FoS_c': safeties,
        'moor.FoS_e': least,
      }),
      ...(worst !== undefined && {
        'moor.case_F': combinations[worst]?.name ?? null,
        'moor.w_F': combinations[worst]?.windFrom ?? null,
        'moor.c_F': combinations[worst]?.currentFrom ?? null,
      }),
      ...workEnvelope(lines, { combinations, shown }, states),
      'moor.c_line': judgeSafety(number('moor.n_req'), least),
      ...(least2 !== undefined && {
        ...((Number.isNaN(least2) || least2 < idle) && { 'moor.FoS_g': least2 }),
        'moor.c_along': judgeSafety(number('moor.n_req'), least2),
      }),
      'moor.lines.T_e': lines.map(({ isOn }, line) => {
        if (!isOn) return 0;
        // Where none was worked out in the combination shown it is not known which are stated.
        if (Number.isNaN(intact.least)) return Number.NaN;
        // A ship adrift in one combination parts the lines in it: no tension is the largest.
        if (states.some((state) => state === undefined)) return Number.NaN;
        return largestOf(states, (state) => Math.max(0, state?.tensions[line] ?? 0));
      }),
      'moor.lines.T_f': lines.map(({ isOn }, line) =>
        isOn
          ? Math.max(
              0,
              ...losses.flatMap((row) =>
                row.flatMap((s, other) => (s && other !== line ? [s.tensions[line] ?? 0] : [])),
              ),
            )
          : 0,
      ),
      ...workMovement(
        entries,
        lines,
        rule,
        {
          whole: states.map((state, row) => ({ force: forces[row] ?? noForce, state })),
          losses: losses.flatMap((row, at) =>
            row.map((state, line) => ({ force: forces[at] ?? noForce, state, lost: line })),
          ),
        },
        !Number.isNaN(intact.least),
      ),
      'moor.n_u': 0,
      'moor.c_rounds': Number.isNaN(intact.least) ? doesNotApply : judgeTruth(true),
      ...workMoments({ lines, fenders }, rule, forces, states, { off: intact.momentOff, between }),
      ...workFenders(fenders, [...states, ...losses.flat()]),
      ...workLost(number, lines, use, { combinations, shown }, losses),
    },
  };
}

const noForce: Force = { along: 0, off: 0, moment: 0 };

function leastSafety(lines: readonly Line[], use: readonly boolean[], state: Held, lost?: number): number {
  if (state === undefined) return 0;
  return Math.min(
    idle,
    ...lines.flatMap(({ strength }, row) =>
      row === lost || !use[row] ? [] : [safetyOf(strength, state.tensions[row] ?? 0)],
    ),
  );
}

/** The least factor of safety where what the lines pull along the berth besides is shared as well; undefined where left open. */
function leastAlong(
  lines: readonly Line[],
  use: readonly boolean[],
  rule: Rule,
  load: Force,
  state: Held,
): number | undefined {
  if (state === undefined) return 0;
  if (rule === '3-DOF') return leastSafety(lines, use, state);
  const swayed = lines.map((line, row) =>
    // A line that went slack has lost its pretension and no more.
    use[row] ? Math.max(-line.pretension, fromSwayOf(line, rule, state.share)) : 0,
  );
  const total =
    load.along +
    sumOf(
      lines.map((line, row) => line.along * (swayed[row] ?? 0)),
      (one) => one,
    );
  const isNothing = Math.abs(total) <= 1e-9 * Math.hypot(load.along, load.off);
  const isNear = Math.abs(total) <= 1e-6 * Math.hypot(load.along, load.off);
  if (isNear) return isNothing && total === 0 ? leastOf(swayed) : undefined;
  const against = lines.map((line, row) =>
    use[row] && sharesAlong(line) && line.along * total < 0 ? line.stiffness * line.along ** 2 : 0,
  );
  const stiffness = sumOf(against, (one) => one);
  if (stiffness <= 0) return 0;
  return leastOf(
    swayed.map((tension, row) => {
      const part = (against[row] ?? 0) / stiffness;
      return tension + (part > 0 ? part * Math.abs(total / (lines[row]?.along ?? Number.NaN)) : 0);
    }),
  );

  function leastOf(shares: readonly number[]): number {
    return Math.min(
      idle,
      ...lines.flatMap(({ strength, pretension }, row) =>
        use[row] ? [safetyOf(strength, pretension + (shares[row] ?? 0))] : [],
      ),
    );
  }
}

/** In which combination each line pulls hardest, where one alone does so; a line taken out is shown in the combination shown. */
function workEnvelope(
  lines: readonly Line[],
  { combinations, shown }: Loads,
  states: readonly Held[],
): Worked {
  if (states.some((state) => state === undefined)) return {};
  const rows = lines.map(({ isOn }, line) =>
    isOn ? rowOfLargest(states.map((state) => Math.max(0, state?.tensions[line] ?? 0))) : shown,
  );
  if (rows.some((row) => row === undefined)) return {};
  const column = (of: (one: Loads['combinations'][number]) => Cell): Cell[] =>
    rows.map((row) => {
      const one = combinations[row ?? 0];
      return one ? of(one) : null;
    });
  return {
    'moor.lines.case_e': column(({ name }) => name),
    'moor.lines.w_e': column(({ windFrom }) => windFrom),
    'moor.lines.c_e': column(({ currentFrom }) => currentFrom),
  };
}

/** Sway alone leaves the moment out: what its shares come to, beside the moment of each combination. */
function workMoments(
  { lines, fenders }: { readonly lines: readonly Line[]; readonly fenders: readonly Fender[] },
  rule: Rule,
  forces: readonly Force[],
  states: readonly Held[],
  { off: shown, between }: { readonly off: number; readonly between: number },
): Worked {
  if (rule !== 'sway') return {};
  const off = states.map((state, row) => {
    const { off: square, moment } = forces[row] ?? noForce;
    const ofLines = lines.map((line) =>
      state && line.isOn
        ? line.x * line.square * Math.max(-line.pretension, fromSwayOf(line, rule, state.share))
        : 0,
    );
    const ofFenders = fenders.map(({ x, stiffness }) => stiffness * x * Math.min(0, state?.share.sway ?? 0));
    const taken = sumOf([...ofLines, ...ofFenders], (one) => one);
    return Math.abs(taken - moment) / (1e-3 * (Math.abs(moment) + Math.abs(square) * between) + 0.01);
  });
  return {
    'moor.cases.e_c': off,
    'moor.sum_M': judge(Math.max(shown, ...off), 1),
  };
}

/** Each line lost in turn, in the combination in which that is worst. */
function workLost(
  number: Entries['number'],
  lines: readonly Line[],
  use: readonly boolean[],
  { combinations }: Loads,
  losses: readonly (readonly Held[])[],
): Worked {
  const each = losses.map((states) => states.map((state, row) => leastSafety(lines, use, state, row)));
  const safeties = lines.map((_, line) => Math.min(...each.map((row) => row[line] ?? 0)));
  const cases = lines.map((_, line) => rowOfLargest(each.map((row) => -(row[line] ?? 0))));
  const governing = lines.map((_, line) => {
    const row = cases[line];
    return row === undefined ? undefined : losses[row]?.[line];
  });
  const least = Math.min(...safeties);
  const wanted = wantedWithLoss(number);
  const worst = rowOfLargest(safeties.map((safety) => -safety));
  const isHeld = cases.every((row) => row !== undefined) && governing.every((state) => state !== undefined);
  const column = (of: (share: Share) => number): Cell[] =>
    governing.flatMap((state) => (state ? [of(state.share)] : []));
  const row = worst === undefined ? undefined : cases[worst];
  const tensions = worst === undefined || row === undefined ? undefined : losses[row]?.[worst]?.tensions;
  const hasAlong = combinations.every(({ force }) => countsAlong(force));
  return {
    'moor.lost.line_i': lines.map(({ name }) => name),
    ...(safeties.every((one) => one < idle) && { 'moor.lost.FoS_i': safeties }),
    ...(isHeld && {
      'moor.lost.v_i': column(({ sway }) => sway),
      'moor.lost.r_i': column(({ turn }) => turn),
      ...(hasAlong && { 'moor.lost.u_i': column(({ surge }) => surge) }),
      'moor.lost.case_i': cases.map((at) => combinations[at ?? 0]?.name ?? null),
    }),
    ...(least < idle && { 'moor.FoS_w': least }),
    'moor.c_lost': judgeSafety(wanted, least),
    'moor.c_out': judgeSafety(wanted, least),
    ...(worst !== undefined && {
      'moor.worst': lines[worst]?.name ?? null,
      ...(row !== undefined && {
        'moor.case_w': combinations[row]?.name ?? null,
        'moor.w_w': combinations[row]?.windFrom ?? null,
        'moor.c_w': combinations[row]?.currentFrom ?? null,
      }),
      'moor.i_o': worst + 1,
      'moor.L_o': lines[worst]?.name ?? null,
      'moor.FoS_1': least,
      ...(tensions && { 'moor.lines.T_1': tensions }),
    }),
  };
}
