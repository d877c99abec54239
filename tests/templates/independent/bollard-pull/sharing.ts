import { sumOf } from './entries.ts';
import { type Fender, squeezeOf } from './fenders.ts';
import type { Force } from './flow.ts';
import { type Line, sharesAlong, sharesOff } from './lines.ts';

/** How the load is shared among lines: `sheet` option names of the rule. */
export type Rule = 'cos2' | 'cos' | 'sway' | '3-DOF';

/** Stiffness of the lines that share, in the three motions: kN/m, kN, kN·m. */
export interface Stiffness {
  readonly off: number;
  readonly offYaw: number;
  readonly yaw: number;
  readonly along: number;
  readonly alongOff: number;
  readonly alongYaw: number;
}

/** The ship's move under the load, and what each line takes of it: m, rad, kN. */
export interface Share {
  readonly stiffness: Stiffness;
  readonly sway: number;
  readonly turn: number;
  readonly surge: number;
  /** Tension from sway and yaw, and from surge, line by line of those given. */
  readonly fromSway: readonly number[];
  readonly fromSurge: readonly number[];
  /** Whether the lines hold the ship in sway and yaw, and against the force along the berth. */
  readonly isHeld: boolean;
  readonly isHeldAlong: boolean;
}

/** A part this small of the whole is rounding. */
const rounding = 1e-9;

/** Whether a force along the berth is more than rounding beside the load. */
export const countsAlong = ({ along, off }: Force): boolean =>
  Math.abs(along) > rounding * Math.hypot(along, off);

/** Tension of a line for unit sway, and the lever of its pull about the origin in yaw. */
const perSway = (line: Line, rule: Rule): number =>
  rule === 'cos' ? line.stiffness : line.stiffness * line.square;
export const leverOf = (line: Line, rule: Rule): number =>
  rule === '3-DOF' ? line.x * line.square + line.y * line.along : line.x * line.square;
const perTurn = (line: Line, rule: Rule): number =>
  rule === '3-DOF' ? line.stiffness * leverOf(line, rule) : perSway(line, rule) * line.x;
const perSurge = (line: Line): number => -line.stiffness * line.along;

/** Whether a line takes part off the berth, and along it against this load, by the rule. */
export const isOffShare = (line: Line, rule: Rule): boolean => rule === '3-DOF' || sharesOff(line);
export const isAlongShare = (line: Line, rule: Rule, { along }: Force): boolean =>
  rule === '3-DOF' || (sharesAlong(line) && -line.along * along > 0);

/**
 * Shares the load among lines that all pull, each elastic, and fenders that push, by equilibrium of the moves that the rule
 * counts. What the lines hold along the berth is rounding where it is next to nothing beside the stiffness of all in use.
 */
export function shareLoad(
  lines: readonly Line[],
  rule: Rule,
  load: Force,
  { pushing, inUse }: { readonly pushing: readonly Fender[]; readonly inUse: readonly Line[] },
): Share {
  const off = lines.map((line) => (isOffShare(line, rule) ? 1 : 0));
  const along = lines.map((line) => (isAlongShare(line, rule, load) ? 1 : 0));
  const isWhole = rule === '3-DOF';
  const total = (part: (line: Line) => number, counts: readonly number[]): number =>
    sumOf(
      lines.map((line, row) => (counts[row] === 1 ? part(line) : 0)),
      (value) => value,
    );
  const stiffness: Stiffness = {
    off:
      total((line) => perSway(line, rule) * line.square, off) + sumOf(pushing, (fender) => fender.stiffness),
    offYaw:
      rule === 'sway'
        ? 0
        : total((line) => perSway(line, rule) * (isWhole ? leverOf(line, rule) : line.square * line.x), off) +
          sumOf(pushing, ({ stiffness: of, x }) => of * x),
    yaw:
      total(
        (line) =>
          isWhole ? perTurn(line, rule) * leverOf(line, rule) : perTurn(line, rule) * line.square * line.x,
        off,
      ) + sumOf(pushing, ({ stiffness: of, x }) => of * x ** 2),
    along: total((line) => line.stiffness * line.along ** 2, along),
    alongOff: isWhole ? total((line) => perSurge(line) * line.square, along) : 0,
    alongYaw: isWhole ? total((line) => perSurge(line) * leverOf(line, rule), along) : 0,
  };
  const all = sumOf(lines, (line) => line.stiffness) + sumOf(pushing, (fender) => fender.stiffness);
  const hasAlong = stiffness.along > rounding * sumOf(inUse, (line) => line.stiffness);
  const [coupleOff, coupleYaw] = hasAlong
    ? [stiffness.alongOff / stiffness.along, stiffness.alongYaw / stiffness.along]
    : [0, 0];
  // Surge is eliminated first, so that the two equations left are those of sway and yaw alone.
  const reducedOff = stiffness.off - coupleOff * stiffness.alongOff;
  const reducedOffYaw = stiffness.offYaw - coupleOff * stiffness.alongYaw;
  const reducedYaw = stiffness.yaw - coupleYaw * stiffness.alongYaw;
  const [forceOff, moment] = [load.off - coupleOff * load.along, load.moment - coupleYaw * load.along];

  const determinant = reducedOff * reducedYaw - reducedOffYaw ** 2;
  const isHeld =
    rule === 'sway'
      ? stiffness.off > rounding * all
      : reducedOff > rounding * stiffness.off &&
        reducedYaw > rounding * stiffness.yaw &&
        determinant > rounding * stiffness.off * stiffness.yaw;
  const sway = !isHeld
    ? Number.NaN
    : rule === 'sway'
      ? forceOff / reducedOff
      : (forceOff * reducedYaw - moment * reducedOffYaw) / determinant;
  const turn = !isHeld
    ? Number.NaN
    : rule === 'sway'
      ? 0
      : (moment * reducedOff - forceOff * reducedOffYaw) / determinant;
  const surge = hasAlong ? load.along / stiffness.along - coupleOff * sway - coupleYaw * turn : 0;
  return {
    stiffness,
    sway,
    turn,
    surge: isWhole || hasAlong ? surge : 0,
    isHeld,
    isHeldAlong: hasAlong || !countsAlong(load),
    fromSway: lines.map((line, row) =>
      off[row] === 1 ? perSway(line, rule) * sway + perTurn(line, rule) * turn : 0,
    ),
    fromSurge: lines.map((line, row) => (along[row] === 1 ? perSurge(line) * surge : 0)),
  };
}

/** What a line takes of a move in sway and yaw. */
export const fromSwayOf = (line: Line, rule: Rule, { sway, turn }: Pick<Share, 'sway' | 'turn'>): number =>
  isOffShare(line, rule) ? perSway(line, rule) * sway + perTurn(line, rule) * turn : 0;

/** A state of the mooring in which lines pull only: the tension of each, or undefined where they cannot hold the ship. */
export interface State {
  readonly tensions: readonly number[];
  readonly share: Share;
  /** Whether some line went slack and was left out. */
  readonly hasSlack: boolean;
  /** Whether a line pulls, line by line, and the fenders that push. */
  readonly isTaut: readonly boolean[];
  readonly pushing: readonly Fender[];
}

/** Where the ship lies: m, rad, m. */
type Place = Pick<Share, 'sway' | 'turn' | 'surge'>;

const atRest: Place = { sway: 0, turn: 0, surge: 0 };
const halfway = (one: Place, other: Place): Place => ({
  sway: (one.sway + other.sway) / 2,
  turn: (one.turn + other.turn) / 2,
  surge: (one.surge + other.surge) / 2,
});

/** So many rounds go the whole way to the balance found; then, by turns, only half of it, for whole steps may go in a ring. */
const wholeRounds = 16;

/**
 * Shares the load among lines that take tension only and fenders that push only: those that would do otherwise are left out
 * and the load is shared again, and one left out that the ship's move would load comes back, until the same hold twice.
 */
export function holdShip(
  lines: readonly Line[],
  use: readonly boolean[],
  rule: Rule,
  load: Force,
  { fenders, rounds }: { readonly fenders: readonly Fender[]; readonly rounds: number },
): State | undefined | 'unsettled' {
  const none = -rounding * Math.hypot(load.along, load.off);
  const stretchAt = (place: Place): number[] =>
    lines.map((line) => {
      const along = isAlongShare(line, rule, load) ? perSurge(line) * place.surge : 0;
      return line.pretension + fromSwayOf(line, rule, place) + along;
    });
  const holdingAt = (place: Place): Holding => {
    const stretch = stretchAt(place);
    return {
      isTaut: use.map((isUsed, row) => isUsed && (stretch[row] ?? 0) >= none),
      pushing: fenders.filter((fender) => squeezeOf(fender, place) > 0),
    };
  };
  const inUse = lines.filter(({ isOn }) => isOn);
  let holding: Holding = { isTaut: use, pushing: load.off < 0 ? fenders : [] };
  let [before, place] = [atRest, atRest];
  for (let next = 2; next <= rounds; next += 1) {
    const { isTaut, pushing } = holding;
    const kept = lines.filter((_, row) => isTaut[row]);
    if (kept.length + pushing.length === 0) return undefined;
    const share = shareLoad(kept, rule, load, { pushing, inUse });
    if (!share.isHeld || !share.isHeldAlong) return undefined;
    const isWhole = next <= wholeRounds || next % 2 === 0;
    [before, place] = [place, isWhole ? share : halfway(before, place)];
    const then = holdingAt(place);
    if (isWhole && isSame(then, holding)) {
      return {
        share,
        tensions: stretchAt(share).map((tension, row) => (isTaut[row] ? tension : 0)),
        hasSlack: isTaut.some((one, row) => one !== use[row]),
        isTaut,
        pushing,
      };
    }
    holding = then;
  }
  return 'unsettled';
}

/** What holds the ship: whether each line pulls, and the fenders that push. */
interface Holding {
  readonly isTaut: readonly boolean[];
  readonly pushing: readonly Fender[];
}

function isSame(one: Holding, other: Holding): boolean {
  return (
    one.isTaut.every((isTaut, row) => isTaut === other.isTaut[row]) &&
    one.pushing.length === other.pushing.length &&
    one.pushing.every((fender) => other.pushing.includes(fender))
  );
}
