import { fail, type Outcome, problem, succeed } from '../../diagnostics/index.ts';
import {
  type Edit,
  type Hasher,
  hashBook,
  joinEdits,
  type SigningRole,
  type SignOff,
} from '../../document/index.ts';
import { isReasonOpen, type Notebook, statedValues, toMend } from '../../notebook/index.ts';
import { basisNow, type Change, changesSince, freshId, stateAt } from '../checking/bases.ts';
import { bookState } from '../checking/book-state.ts';
import { checkingOf, coverageOf } from '../checking/checking.ts';
import type { Said } from '../checking/edits.ts';

/** What the second engine came to, as far as signing asks: how many values differ; undefined where it was not asked. */
export interface SecondEngine {
  readonly differing: number;
}

/**
 * How many cases of templates did not agree when they were run: on the formulas as they are, and on those of before, which
 * says nothing of these.
 */
export interface CasesRun {
  readonly failing: number;
  readonly failedBefore: number;
}

const NO_CASES: CasesRun = { failing: 0, failedBefore: 0 };

/**
 * What stands against a signature, each in a few words: nothing where a book may be signed as it is. Who prepared a book has not
 * checked it yet.
 */
export function openAtSigning(
  notebook: Notebook,
  second: SecondEngine | undefined,
  role: SigningRole,
  cases = NO_CASES,
): readonly string[] {
  const { example } = notebook.book;
  const { all, gone, open } = checkingOf(notebook);
  const count = coverageOf(all);
  const comments = all.reduce((sum, one) => sum + one.open.length, open.length);
  const errors = toMend(notebook).length;
  const failing = [...notebook.model.items.keys()].filter(
    (id) => notebook.verdict(id)?.holds === false,
  ).length;
  const reasons = statedValues(notebook).filter(({ statement }) => isReasonOpen(statement)).length;
  const counted: readonly (readonly [count: number, one: string, several: string])[] = [
    [errors, 'problem', 'problems'],
    [failing, 'check that fails', 'checks that fail'],
    [
      role === 'prepared' ? 0 : count['not checked'],
      `of ${count.all} results and entries not checked`,
      `of ${count.all} results and entries not checked`,
    ],
    [count.differs, 'hand value that differs', 'hand values that differ'],
    [count['not comparable'], 'hand value that cannot be compared', 'hand values that cannot be compared'],
    [count.stale, 'hand value or mark that is stale', 'hand values and marks that are stale'],
    [
      gone.length,
      'hand value or mark of a line that is gone',
      'hand values and marks of lines that are gone',
    ],
    [comments, 'open comment', 'open comments'],
    [reasons, 'stated value without a reason', 'stated values without a reason'],
    [
      second?.differing ?? 0,
      'value that the second engine finds otherwise',
      'values that the second engine finds otherwise',
    ],
    [cases.failing, 'case of a template that no longer agrees', 'cases of templates that no longer agree'],
    [
      cases.failedBefore,
      'case of a template that did not agree, not run again since the formulas changed',
      'cases of templates that did not agree, not run again since the formulas changed',
    ],
  ];
  const told = counted.flatMap(([n, one, several]) => (n === 0 ? [] : [`${n} ${n === 1 ? one : several}`]));
  return [
    ...(example
      ? [`the inputs of “${example.title}”, a case of a template, in place of the book’s own`]
      : []),
    ...told,
    ...(second === undefined ? ['no word of the second engine yet'] : []),
  ];
}

/**
 * The edit that puts a name under the content of the book as it is. What is open then needs a reason in writing, and goes with
 * the signature.
 *
 * @returns refused where something is open and no reason is given
 */
export function signOff(
  notebook: Notebook,
  { role, by, date }: Said & { readonly role: SigningRole },
  open: readonly string[],
  reason = '',
): Outcome<Edit> {
  if (open.length > 0 && reason.trim() === '')
    return fail(problem('signed-without-reason', { from: 0, to: 0 }, { open }));
  const { review } = notebook.book;
  const basis = basisNow(notebook);
  const value: SignOff = {
    id: freshId(review.signOffs, 'n'),
    role,
    by,
    ...(date !== undefined && { date }),
    content: hashBook(notebook.book),
    basis: basis.id,
    ...(open.length > 0 && { despite: { reason: reason.trim(), open: [...open] } }),
  };
  const index = review.signOffs.length;
  const insert: Edit = {
    label: 'sign',
    patches: [{ kind: 'insert', at: ['review', 'signOffs'], index, value }],
  };
  return succeed(joinEdits('sign', [...(basis.edit ? [basis.edit] : []), insert]));
}

/** A signature, whether the content is still the one it was put under, and what has changed since; one that is withdrawn holds for nothing. */
export interface SignatureStanding {
  readonly signature: SignOff;
  readonly holds: boolean;
  /** What is computed or entered otherwise; none where only words have changed, undefined where that cannot be told. */
  readonly changes: readonly Change[] | undefined;
}

/** How the signatures of a book stand, the newest first. */
export function signaturesOf(notebook: Notebook, hasher?: Hasher): readonly SignatureStanding[] {
  const { review } = notebook.book;
  if (review.signOffs.length === 0) return [];
  const content = hashBook(notebook.book, hasher);
  const now = bookState(notebook);
  return review.signOffs.toReversed().map((signature) => {
    if (signature.withdrawn) return { signature, holds: false, changes: [] };
    const holds = signature.content === content;
    if (holds) return { signature, holds, changes: [] };
    const before = stateAt(review, signature.basis);
    return { signature, holds, changes: before && changesSince(before, now).all };
  });
}

/** The edit that withdraws a signature; it stays to be seen with who withdrew it. */
export function withdrawSignature({ id }: SignOff, said: Said): Edit {
  const at = ['review', 'signOffs', id, 'withdrawn'];
  return { label: 'withdraw a signature', patches: [{ kind: 'set', at, value: { ...said } }] };
}
