import type { Verdict, Worked } from '../program.ts';
import { workCombinations } from './combinations.ts';
import { type Entries, isCount, largestOf, positive, rowOfLargest, sumOf } from './entries.ts';
import { type Fender, readFenders } from './fenders.ts';
import type { Force } from './flow.ts';
import { type Line, sharesAlong, sharesOff } from './lines.ts';
import type { Combination, Loads } from './load.ts';
import { type Intact, idle, type Pulls, safetyOf, wantedWithLoss } from './safety.ts';
import {
  countsAlong,
  holdShip,
  isAlongShare,
  isOffShare,
  leverOf,
  type Rule,
  type Share,
  shareLoad,
} from './sharing.ts';
import { doesNotApply, judge, judgeTruth, refused } from './verdicts.ts';

/** What no line is left to hold. */
const fails: Verdict = { verdict: 'fails' };

/** Works out the sharing, with all lines and with each lost in turn, and all that the mooring sheet says of it. */
export function workMooring(
  entries: Entries,
  lines: readonly Line[],
  { combinations, shown }: Loads,
  ship: {
    readonly breadth: number;
    readonly between: number;
    readonly sideArea: number;
    readonly frontArea: number;
    readonly draught: number;
  },
): { readonly pulls: Pulls; readonly worked: Worked } {
  const rule = entries.text('moor.rule') as Rule;
  const plan = {
    ...workPlan(entries, lines),
    ...workPlace(lines, { length: entries.number('ship.LOA'), breadth: ship.breadth }),
    ...workTanker(ship),
  };
  const load = shown === undefined ? undefined : combinations[shown]?.force;
  if (!load || shown === undefined)
    return { pulls: { intact: undefined, lost: undefined, combinations: [] }, worked: plan };
  const fenders = readFenders(entries);
  const forces = {
    ...workBefore(entries, { combinations, load }, ship.between, strengthOnBoard(lines)),
    ...(fenders.length > 0 && { 'moor.c_off': doesNotApply }),
  };
  const use = lines.map(({ isOn }) => isOn);
  if (!use.some((one) => one)) {
    return {
      pulls: { intact: undefined, lost: undefined, combinations: [] },
      worked: { ...plan, ...forces, 'moor.n_on': 0, 'moor.c_line': fails, 'moor.c_lost': fails },
    };
  }
  if (lines.some(isUnknown) || combinations.some(({ force }) => Object.values(force).some(Number.isNaN))) {
    const none = lines.map(({ isOn }) => (isOn ? null : 0));
    return {
      pulls: {
        intact: [lines.map(() => Number.NaN)],
        lost: [lines.map(() => Number.NaN)],
        combinations: [],
      },
      worked: {
        ...plan,
        ...forces,
        'moor.lines.T': none,
        'moor.c_line': refused,
        'moor.c_lost': refused,
        'moor.c_out': refused,
        'moor.c_along': refused,
      },
    };
  }
  const intact = workIntact(lines, rule, load, {
    between: ship.between,
    fenders,
    rounds: entries.number('moor.n_s'),
  });
  const all = workCombinations(
    entries,
    { lines, fenders, use },
    rule,
    { combinations, shown },
    intact,
    ship.between,
  );
  return { pulls: all.pulls, worked: { ...plan, ...forces, ...intact.worked, ...all.worked } };
}

const isUnknown = ({ stiffness, strength, limit, pretension, x, along, square, y }: Line): boolean =>
  Number.isNaN(stiffness + strength + limit + pretension + x + along + square + y);

/** What the plan says before any load: counts, names, angles, strengths on board. */
function workPlan({ number }: Entries, lines: readonly Line[]): Worked {
  const on = lines.filter(({ isOn }) => isOn);
  const same = lines.map(({ name }) => lines.filter((line) => line.name === name).length);
  const [breasts, springs] = [
    lines.filter(({ acts }) => acts === 'sway'),
    lines.filter(({ acts }) => acts === 'surge'),
  ];
  const offNormal = ({ horizontal, level }: Line): number => Math.abs(horizontal) + 0 * level;
  const offParallel = (line: Line): number => Math.abs(90 - offNormal(line));
  const onBoard = strengthOnBoard(lines);
  const steep = ({ vertical }: Line): number => Math.abs(vertical);
  /** A limit of angle that all lines keep: lines taken out are left open, so it is given where they change nothing. */
  const limit = (
    name: string,
    check: string,
    some: readonly Line[],
    angle: (line: Line) => number,
    allowed: number,
    none: Verdict,
  ): Worked => {
    const used = some.filter(({ isOn }) => isOn);
    const [all, those] = [largestOf(some, angle), largestOf(used, angle)];
    if (some.length === 0) return { [check]: none };
    if (!Object.is(all, those)) return {};
    return { [name]: all, [check]: judge(all, allowed) };
  };
  return {
    'moor.lines.n_same': same,
    'moor.c_names': judge(Math.max(...same), 1),
    'moor.n_l': lines.length,
    'moor.c_parts': judgeTruth(lines.every(({ parts }) => isCount(parts))),
    'moor.n_on': on.length,
    ...limit('moor.τ_max', 'moor.c_τ', lines, steep, number('moor.lim_τ'), refused),
    ...limit('moor.δ_b', 'moor.c_breast', breasts, offNormal, number('moor.lim_b'), doesNotApply),
    ...limit('moor.δ_s', 'moor.c_spring', springs, offParallel, number('moor.lim_s'), doesNotApply),
    'moor.n_lost': wantedWithLoss(number),
    'moor.S_av': onBoard.springs,
    'moor.B_av': onBoard.others,
  };
}

/** Whether the lines leave from the ship, and lead to the berth. */
function workPlace(
  lines: readonly Line[],
  { length, breadth }: { readonly length: number; readonly breadth: number },
): Worked {
  const reach = (of: (line: Line) => number): number =>
    Math.max(...lines.map(of)) - Math.min(...lines.map(of));
  const [along, across] = [reach(({ x }) => x), reach(({ y }) => y)];
  const isKnown = lines.every(({ square }) => !Number.isNaN(square));
  const away = lines.filter(({ square }) => square < 0).length;
  return {
    'moor.l_c': along,
    'moor.b_l': across,
    'moor.c_long': judge(along, length),
    'moor.c_wide': judge(across, breadth),
    'moor.n_off': isKnown ? away : null,
    'moor.c_side': isKnown ? judgeTruth(away === 0) : refused,
  };
}

/** Break strength of all springs and of all other lines, kN; a line of unknown strength leaves both unknown. */
function strengthOnBoard(lines: readonly Line[]): { readonly springs: number; readonly others: number } {
  const unknown = sumOf(lines, ({ dry }) => 0 * dry);
  const strength = ({ parts, dry }: Line): number => parts * dry;
  return {
    springs:
      unknown +
      sumOf(
        lines.filter(({ acts }) => acts === 'surge'),
        strength,
      ),
    others:
      unknown +
      sumOf(
        lines.filter(({ acts }) => acts !== 'surge'),
        strength,
      ),
  };
}

/** Strength wanted against that on board; where none is wanted, none need be there. */
const judgeStrength = (wanted: number, onBoard: number): Verdict =>
  wanted === 0 && !Number.isNaN(onBoard) ? { verdict: 'holds' } : judge(wanted, onBoard);

/** OCIMF Mooring Equipment Guidelines, 2nd ed. (1997), 2.6.1.1, formulas 22 and 23. */
function workTanker({
  between,
  frontArea,
  sideArea,
  draught,
}: {
  readonly between: number;
  readonly sideArea: number;
  readonly frontArea: number;
  readonly draught: number;
}): Worked {
  return {
    'moor.S_22': 1.992 * frontArea + 0.369 * (0.01 * between ** 2 + between),
    'moor.B_23': 1.476 * sideArea + 1.291 * draught * between,
  };
}

/** OCIMF Mooring Equipment Guidelines, 2nd ed. (1997), 2.5.3: break strength wanted before a layout is known. */
function workBefore(
  { number }: Entries,
  { combinations, load }: { readonly combinations: readonly Combination[]; readonly load: Force },
  between: number,
  onBoard: { readonly springs: number; readonly others: number },
): Worked {
  const springs = 1 / (number('moor.η_s') * number('moor.lim_w'));
  const breasts = 1 / (number('moor.η_b') * number('moor.lim_w'));
  const [aft, fore] = [load.off / 2 - load.moment / between, load.off / 2 + load.moment / between];
  const forces = combinations.map(({ force }) => force);
  // Whether a force along the berth is more than rounding takes the whole load to tell.
  const counts = (force: Force): number =>
    Number.isNaN(force.along + force.off) ? Number.NaN : countsAlong(force) ? 1 : 0;
  const alongs = forces.map((force) => counts(force) * Math.abs(force.along));
  const ends = forces.map(({ off, moment }) =>
    Math.max(off / 2 - moment / between, off / 2 + moment / between, 0),
  );
  // All combinations are worked, or none.
  const known = sumOf(forces, ({ along: x, off, moment }) => 0 * (x + off + moment));
  const along = known + largestOf(alongs, (one) => one);
  const end = known + largestOf(ends, (one) => one);
  const [mostAlong, mostAtEnd] = [rowOfLargest(alongs), rowOfLargest(ends)];
  const wantedAlong = 2 * springs * along;
  const wantedAtEnd = 2 * breasts * end;
  const onto = forces.map(({ off, along: x }) => (-off <= 1e-9 * Math.hypot(x, off) ? 0 : -off));
  return {
    // Fenders take no part, so that lines hold a load off the berth alone.
    ...(!Number.isNaN(known) && {
      'moor.c_off': judgeTruth(onto.every((one) => one === 0)),
      ...workLargest(forces),
      'moor.Y_on': Math.max(...onto),
    }),
    'moor.X_m': along,
    'moor.Y_m': end,
    ...(mostAlong !== undefined &&
      !Number.isNaN(known) && { 'moor.case_X': combinations[mostAlong]?.name ?? null }),
    ...(mostAtEnd !== undefined &&
      !Number.isNaN(known) && { 'moor.case_Y': combinations[mostAtEnd]?.name ?? null }),
    'moor.m_s': springs,
    'moor.m_b': breasts,
    'moor.Y_A': aft,
    'moor.Y_F': fore,
    'moor.S_req': wantedAlong,
    'moor.c_S': judgeStrength(wantedAlong, onBoard.springs),
    'moor.B_req': wantedAtEnd,
    'moor.c_B': judgeStrength(wantedAtEnd, onBoard.others),
  };
}

/** A mooring that holds nothing is not checked by what it holds. */
function workLargest(forces: readonly Force[]): Worked {
  const largest = Math.max(...forces.map(({ along, off }) => Math.hypot(along, off)));
  return { 'moor.F_m': largest, 'moor.c_load': judge(1, largest) };
}

/** All lines in use, elastic as drawn: one that would push is told, and then nothing rests on the sharing. */
function workIntact(
  lines: readonly Line[],
  rule: Rule,
  load: Force,
  {
    between,
    fenders,
    rounds,
  }: { readonly between: number; readonly fenders: readonly Fender[]; readonly rounds: number },
): Intact {
  const on = lines.filter(({ isOn }) => isOn);
  const state = holdShip(
    lines,
    lines.map(({ isOn }) => isOn),
    rule,
    load,
    { fenders, rounds },
  );
  // A ship adrift, or one of which it is not known how she lies, has no factor of safety.
  const isShipHeld = state !== undefined && state !== 'unsettled';
  const pushing = isShipHeld ? state.pushing : [];
  const share = shareLoad(on, rule, load, { pushing, inUse: on });
  if (!share.isHeld) {
    const none = lines.map(({ isOn }) => (isOn ? null : 0));
    return {
      tensions: lines.map(() => Number.NaN),
      least: Number.NaN,
      leastAlong: Number.NaN,
      momentOff: Number.NaN,
      worked: {
        'moor.v': null,
        'moor.r': rule === 'sway' ? 0 : null,
        'moor.lines.T': none,
        'moor.FoS_0': null,
        'moor.T_max': null,
        'moor.sum_Y': refused,
        'moor.sum_M': refused,
      },
    };
  }
  const spread = (shares: readonly number[]): number[] => {
    const left = [...shares];
    return lines.map(({ isOn }) => (isOn ? (left.shift() ?? 0) : 0));
  };
  const [swayed, surged] = [spread(share.fromSway), spread(share.fromSurge)];
  const tensions = lines.map(({ isOn, pretension }, row) =>
    isOn ? pretension + (swayed[row] ?? 0) + (surged[row] ?? 0) : 0,
  );
  const taut = tensions.filter((tension, row) => lines[row]?.isOn && tension > 0).length;
  const isNear = tensions.some((tension, row) => lines[row]?.isOn && Math.abs(tension) < 1e-6);
  const pushes = tensions.some((tension) => tension < -1e-6);
  const along = workAlong(lines, rule, load, share, swayed, surged, tensions);
  const safeties = lines.map(({ strength }, row) =>
    isShipHeld ? safetyOf(strength, tensions[row] ?? 0) : 0,
  );
  const least = Math.min(...safeties);
  const governing = rowOfLargest(lines.map(({ strength }, row) => (tensions[row] ?? 0) / strength));
  const isClear = !pushes && !isNear;
  const { stiffness } = share;
  const pushed = pushing.map(({ x, stiffness: of }) => ({ x, force: -of * (share.sway + share.turn * x) }));
  const sums = workSums(lines, rule, load, between, { swayed, surged, tensions, pushed });
  return {
    tensions: pushes ? undefined : tensions,
    least: pushes ? 0 : least,
    leastAlong: pushes || !isShipHeld ? 0 : along.least,
    momentOff: sums.momentOff,
    worked: {
      'moor.v': share.sway,
      'moor.r': share.turn,
      ...(countsAlong(load) && { 'moor.u': share.surge, 'moor.D': stiffness.along }),
      'moor.A': stiffness.off,
      'moor.B': stiffness.offYaw,
      ...(rule !== 'sway' && { 'moor.C': stiffness.yaw }),
      'moor.E': stiffness.alongOff,
      'moor.F': stiffness.alongYaw,
      'moor.lines.T': tensions,
      ...(lines.every(({ isOn }) => isOn) && {
        'moor.lines.J': lines.map((line) => leverOf(line, rule)),
        ...(rule !== '3-DOF' && { 'moor.lines.T_y': swayed, 'moor.lines.T_x': surged }),
      }),
      'moor.lines.s_y': lines.map((line) => (line.isOn && isOffShare(line, rule) ? 1 : 0)),
      ...(countsAlong(load) && {
        'moor.lines.s_x': lines.map((line) => (line.isOn && isAlongShare(line, rule, load) ? 1 : 0)),
      }),
      ...(isClear && {
        'moor.lines.U': lines.map(({ strength }, row) => (tensions[row] ?? 0) / strength),
        'moor.lines.w_l': lines.map(({ limit }, row) => (tensions[row] ?? 0) / limit),
        ...(safeties.every((one) => one <= idle) && { 'moor.lines.FoS': safeties }),
        ...(least < idle && { 'moor.FoS_0': least }),
        'moor.T_max': Math.max(...tensions),
        ...(governing !== undefined && { 'moor.gov': lines[governing]?.name ?? null }),
      }),
      ...(!isNear && {
        'moor.n_taut': taut,
        'moor.c_slack': judge(lines.filter(({ isOn }) => isOn).length, taut),
      }),
      // Lines take tension only: what rests on one that pushes does not hold.
      ...(pushes ? {} : along.worked),
      ...((pushes || !isShipHeld) && { 'moor.FoS_0': 0, 'moor.FoS_a': 0 }),
      ...sums.worked,
      ...workEfficiency(lines, rule, load, swayed, surged),
    },
  };
}

/** What the lines that share off the berth pull along it besides, and the tensions where that is shared as well. */
function workAlong(
  lines: readonly Line[],
  rule: Rule,
  load: Force,
  share: Share,
  swayed: readonly number[],
  surged: readonly number[],
  tensions: readonly number[],
): { readonly least: number | undefined; readonly worked: Worked } {
  const scale = 1e-9 * Math.hypot(load.along, load.off);
  if (rule === '3-DOF') {
    const left = share.isHeldAlong || !countsAlong(load) ? 0 : load.along;
    const least =
      left !== 0 ? 0 : Math.min(...lines.map(({ strength }, row) => safetyOf(strength, tensions[row] ?? 0)));
    return {
      least,
      worked: {
        'moor.X_t': left,
        'moor.lines.T_a': tensions,
        ...(least < idle && { 'moor.FoS_a': least }),
      },
    };
  }
  const pulled = sumOf(
    lines.map(({ along }, row) => along * (swayed[row] ?? 0)),
    (value) => value,
  );
  const total = load.along + pulled;
  const isNothing = Math.abs(total) <= scale;
  const stiffness = lines.map((line) =>
    line.isOn && sharesAlong(line) && -line.along * total > 0 ? line.stiffness * line.along ** 2 : 0,
  );
  const all = sumOf(stiffness, (value) => value);
  const shared = lines.map(({ along }, row) =>
    all > 0 && along !== 0 ? ((stiffness[row] ?? 0) / all) * Math.abs(total / along) : 0,
  );
  const whole = lines.map(({ isOn, pretension }, row) =>
    isOn ? pretension + (swayed[row] ?? 0) + (shared[row] ?? 0) : 0,
  );
  const least =
    isNothing || all > 0
      ? Math.min(...lines.map(({ strength }, row) => safetyOf(strength, whole[row] ?? 0)))
      : 0;
  const worked: Worked = {
    'moor.X_b':
      total +
      sumOf(
        lines.map(({ along }, row) => along * (surged[row] ?? 0)),
        (value) => value,
      ),
    'moor.X_t': total,
    ...(!isNothing && {
      'moor.lines.k_x': stiffness,
      'moor.K_x': all,
      'moor.lines.T_k': shared,
      'moor.lines.T_a': whole,
    }),
    ...(least < idle && !isNothing && { 'moor.FoS_a': least }),
  };
  return { least: isNothing ? undefined : least, worked };
}

/** Whether what the lines take adds up to the load, to one part in a thousand; a line that would have to push takes nothing. */
function workSums(
  lines: readonly Line[],
  rule: Rule,
  load: Force,
  between: number,
  shares: {
    readonly swayed: readonly number[];
    readonly surged: readonly number[];
    readonly tensions: readonly number[];
    readonly pushed: readonly { readonly x: number; readonly force: number }[];
  },
): { readonly momentOff: number; readonly worked: Worked } {
  const isWhole = rule === '3-DOF';
  const sum = (of: (line: Line) => number, counts: (row: number) => number): number =>
    sumOf(
      lines.map((line, row) => ((shares.tensions[row] ?? 0) < -1e-9 ? 0 : of(line) * counts(row))),
      (value) => value,
    );
  const fromSway = (row: number): number => shares.swayed[row] ?? 0;
  const fromSurge = (row: number): number => shares.surged[row] ?? 0;
  const both = (row: number): number => fromSway(row) + fromSurge(row);
  const off =
    sum(({ square }) => square, isWhole ? both : fromSway) - sumOf(shares.pushed, ({ force }) => force);
  const along = sum((line) => -line.along, isWhole ? both : fromSurge);
  const moment =
    sum((line) => leverOf(line, rule), isWhole ? both : fromSway) -
    sumOf(shares.pushed, ({ x, force }) => x * force);
  const small = 0.01;
  const allowed = 1e-3 * (Math.abs(load.moment) + Math.abs(load.off) * between) + small;
  const adds = (taken: number, whole: number, scale: number): Verdict =>
    judgeTruth(Math.abs(taken - whole) <= 1e-3 * scale + small);
  const worked: Worked = {
    'moor.Y_l': off,
    'moor.M_l': moment,
    'moor.X_l': along,
    'moor.sum_Y': adds(off, load.off, Math.abs(load.off)),
    // Sway alone leaves the moment out of every combination; that is judged over all of them.
    ...(rule !== 'sway' && {
      'moor.sum_M': adds(moment, load.moment, Math.abs(load.moment) + Math.abs(load.off) * between),
    }),
    'moor.sum_X': adds(along, load.along, Math.abs(load.along)),
  };
  return { worked, momentOff: Math.abs(moment - load.moment) / allowed };
}

/** OCIMF Mooring Equipment Guidelines, 2nd ed. (1997), 2.5.3 and App. E.2: restraint when the critical line is at its limit. */
function workEfficiency(
  lines: readonly Line[],
  rule: Rule,
  load: Force,
  swayed: readonly number[],
  surged: readonly number[],
): Worked {
  if (rule === '3-DOF') return {};
  const off = sumOf(
    lines.filter((line) => line.isOn && sharesOff(line)),
    ({ limit }) => limit,
  );
  const along = sumOf(
    lines.filter((line) => line.isOn && isAlongShare(line, rule, load)),
    ({ limit }) => limit,
  );
  const critical = (shares: readonly number[]): number =>
    Math.max(...lines.map(({ limit }, row) => (shares[row] ?? 0) / limit));
  const [worstOff, worstAlong] = [critical(swayed), critical(surged)];
  const restraintOff = load.off / positive(worstOff);
  const restraintAlong = Math.abs(load.along) / positive(worstAlong);
  return {
    'moor.S_y': off,
    ...(load.off > 1e-6 && {
      'moor.W_y': worstOff,
      'moor.R_y': restraintOff,
      'moor.η_y': restraintOff / off,
    }),
    ...(countsAlong(load) &&
      worstAlong > 0 && {
        'moor.S_x': along,
        'moor.W_x': worstAlong,
        'moor.R_x': restraintAlong,
        'moor.η_x': restraintAlong / along,
      }),
  };
}
