import { type Problem, problem, succeed } from '../diagnostics/index.ts';
import type { Check, Statement } from '../document/index.ts';
import {
  type CheckedFormula,
  type CompareNode,
  describeType,
  type Type,
  type Typed,
  textType,
  truthType,
  typeOfUnit,
} from '../language/index.ts';
import { type Entry, PLAIN_UNIT, readEntry, type Unit, type UnitRegistry } from '../units/index.ts';

/** A value stated in place of a computed one, understood. `entry` is absent where `problems` has an error. */
export interface Stated {
  readonly statement: Statement;
  readonly entry?: Exclude<Entry, { kind: 'missing' }>;
  readonly problems: readonly Problem[];
}

/** The sides of a check that are stated, understood. */
export interface StatedSides {
  readonly demand?: Stated;
  readonly capacity?: Stated;
}

/** One side of a check: what acts, or what it is held against. */
export type Side = keyof StatedSides;

/** Both of them. */
export const SIDES: readonly Side[] = ['demand', 'capacity'];

/**
 * Reads a stated value for a line of a type. A number alone is in the line's own unit; where the line states none, the
 * number needs its unit, for what is shown there could be another tomorrow. A blank is no statement, and a reason may
 * be open for a while.
 *
 * @param type what the formula, or the unit column, says the line is; `unknown` where neither does
 */
export function readStated(
  statement: Statement,
  type: Type,
  unit: Unit | undefined,
  registry: UnitRegistry,
): Stated {
  const open = openReason(statement);
  const failed = (...found: readonly Problem[]): Stated => ({ statement, problems: [...found, ...open] });
  const read =
    type.kind === 'text'
      ? succeed<Entry>(textEntry(statement.entry))
      : readEntry(statement.entry, registry, numeric(type) ? unit : undefined);
  if (!read.ok) return failed(...read.problems);
  const entry = read.value;
  const whole = { from: 0, to: statement.entry.length };
  if (entry.kind === 'missing') return failed(problem('stated-blank', whole, {}));
  const found = typeOfStated(entry);
  if (type.kind === 'unknown' || sameKind(found, type)) return { statement, entry, problems: open };
  const facts = {
    written: statement.entry,
    stated: describeType(found, registry),
    wanted: describeType(type, registry, unit),
  };
  return failed(problem('stated-kind', whole, facts));
}

/** What is open of the reason for a stated value: it is missing, or was given for something else and is not confirmed. */
function openReason({ reason, reasonFor }: Statement): readonly Problem[] {
  if (reason.trim() === '') return [problem('stated-without-reason', NOWHERE, {})];
  return reasonFor === undefined ? [] : [problem('stated-reason-carried', NOWHERE, { given: reasonFor })];
}

/** Whether the reason for a stated value is missing, or was given for something else and is not confirmed. */
export function isReasonOpen(statement: Statement): boolean {
  return openReason(statement).length > 0;
}

function textEntry(written: string): Entry {
  const text = written.trim();
  return text === '' ? { kind: 'missing' } : { kind: 'text', text };
}

/** The stated sides of a check. A number alone is in the unit of the check; one without a unit needs it written. */
export function readStatedSides(
  sides: NonNullable<Check['stated']>,
  { typed }: CheckedFormula,
  unit: Unit | undefined,
  registry: UnitRegistry,
): StatedSides {
  const [demand, capacity] = sidesOf(typed);
  // A formula that cannot be read has no sides; what is wrong with it is said there.
  const unread = typed.kind === 'broken' ? typed : undefined;
  const read = (statement: Statement, computed: Typed | undefined, other: Typed | undefined): Stated =>
    computed
      ? readStated(
          statement,
          isZero(computed.type) ? (other?.type ?? computed.type) : computed.type,
          unit,
          registry,
        )
      : { statement, problems: [problem('stated-no-side', NOWHERE, {})] };
  return {
    ...(sides.demand && { demand: read(sides.demand, demand ?? unread, capacity) }),
    ...(sides.capacity && { capacity: asCapacity(read(sides.capacity, capacity ?? unread, demand)) }),
  };
}

/** A stated capacity, refused where it is not above zero: it would let a check hold for a demand of the other sign. */
export function asCapacity(stated: Stated, check = ''): Stated {
  const { entry, statement, problems } = stated;
  if (entry?.kind !== 'number' || entry.si > 0) return stated;
  const span = { from: 0, to: statement.entry.length };
  const found = problem('stated-capacity-not-positive', span, { written: statement.entry.trim(), check });
  return { statement, problems: [found, ...problems] };
}

/** Demand and capacity of a check: the side that is asked to be greater is the capacity. None where nothing is compared so. */
export function sidesOf(typed: Typed): readonly [demand?: Typed, capacity?: Typed] {
  if (typed.kind !== 'compare' || typed.op === '=' || typed.op === '<>') return [];
  return typed.op.startsWith('>') ? [typed.right, typed.left] : [typed.left, typed.right];
}

/** The comparison of a check as one of its two sides, each a cell of its own. */
export function comparedSides(id: string, typed: CompareNode): CompareNode {
  const [demand] = sidesOf(typed);
  const cell = (tree: Typed): Typed => {
    const side = tree === demand ? 'demand' : 'capacity';
    const { type, from, to } = tree;
    return { kind: 'cell', id: sideId(id, side), name: side, type, from, to };
  };
  // A difference held against 0 is weighed term by term; its stated sides have no terms.
  const { balance: _, ...plain } = typed;
  return { ...plain, left: cell(typed.left), right: cell(typed.right) };
}

/** The engine's cells for the two sides of a check, and for what a stated line or side would come to; no name of a book can be these. */
export const sideId = (id: string, side: Side): string => `${id}#${side}`;
export const computedId = (id: string): string => `${id}#computed`;

/** The type a stated entry has by itself; of a bare number, which tells no dimension, nothing. */
export function typeOfStatement({ entry }: Statement, registry: UnitRegistry): Type | undefined {
  const read = readEntry(entry, registry);
  if (!read.ok || read.value.kind === 'missing') return undefined;
  if (read.value.kind === 'number' && read.value.unit === PLAIN_UNIT) return undefined;
  return typeOfStated(read.value);
}

const NOWHERE = { from: 0, to: 0 };

function typeOfStated(entry: Exclude<Entry, { kind: 'missing' }>): Type {
  switch (entry.kind) {
    case 'number':
    case 'point':
      return typeOfUnit(entry.unit);
    case 'text':
      return textType;
    case 'truth':
      return truthType;
  }
}

/** Whether a side is the literal 0, which takes its dimension from the other. */
function isZero(type: Type): boolean {
  return type.kind === 'number' && type.zero === true;
}

function numeric(type: Type): boolean {
  return type.kind === 'number' || type.kind === 'point';
}

function sameKind(a: Type, b: Type): boolean {
  if (a.kind === 'number' && b.kind === 'number') return a.dimension.key === b.dimension.key;
  if (a.kind === 'point' && b.kind === 'point') return a.of === b.of;
  return a.kind === b.kind;
}
