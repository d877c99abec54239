import type { Statement } from '../../../document/index.ts';

/**
 * A value stated anew at a place. The reason that stood there stays, and says for which value it was given until it is
 * confirmed; with the value it was given for, it is as good as it was.
 */
export function stateAnew(before: Statement | undefined, entry: string): Statement {
  if (!before || before.reason.trim() === '') return { entry, reason: '' };
  const { reason, reasonFor = before.entry } = before;
  return withReason(entry, reason, reasonFor === entry ? undefined : reasonFor);
}

/**
 * A statement that is filled or pasted onto a place where `before` stands: its reason says where it was given, until it is
 * confirmed for this place.
 */
export function carryStatement(
  before: Statement | undefined,
  { entry, reason }: Pick<Statement, 'entry' | 'reason'>,
  from: string,
): Statement {
  if (reason.trim() === '') return { entry, reason: '' };
  if (before?.entry === entry && before.reason === reason) return before;
  return withReason(entry, reason, from);
}

/** What a reason that came by the clipboard was given for. */
export const COPIED_FROM = 'the cell it was copied from';

/** A statement whose reason holds for it. */
export function confirmReason({ entry, reason }: Statement): Statement {
  return { entry, reason };
}

function withReason(entry: string, reason: string, reasonFor: string | undefined): Statement {
  return { entry, reason, ...(reasonFor !== undefined && { reasonFor }) };
}
