import type { Problem, ProblemCode } from '../../../diagnostics/index.ts';
import { findFunction, signatureOf } from '../../../language/index.ts';
import { shareOf, type Trial, type Verdict, writeUtilisation } from '../../../notebook/index.ts';
import type { Session } from '../../session/session.ts';
import { standingAt } from '../completion/call-at.ts';
import { type Note, problemNote } from '../notes/note.ts';
import { typeWords, valueWords } from '../notes/quantity-words.ts';

/** Where the caret stands in a formula that is being written, and whether completions are listed there. */
export interface Writing {
  readonly caret: number;
  readonly listed: boolean;
}

/**
 * The line below a formula: its first problem, or what it comes to. While it is being written, what is merely
 * not finished there is not told as a fault: the call being written is shown, or the problem quietly.
 */
export function formulaNote(trial: Trial, session: Session, writing?: Writing): Note | undefined {
  const { checked, problems, outcome, type } = trial;
  const first = problems.find(({ severity }) => severity === 'error');
  if (first) {
    if (!writing || !isUnfinished(first, checked.text, writing)) return problemNote(first);
    return (
      callNote(checked.text, writing.caret) ??
      (checked.text.trim() === '' ? undefined : problemNote(first, 'remark'))
    );
  }
  switch (outcome.kind) {
    case 'value': {
      const words = typeWords(type, session);
      const row = outcome.row === undefined ? '' : `, in row ${outcome.row + 1}`;
      return result(`= ${valueWords(outcome.value, session)}${words === '' ? '' : `, ${words}`}${row}`);
    }
    case 'verdict':
      return result(verdictWords(outcome.verdict, session));
    case 'series': {
      const [start, stop, step] = [outcome.start, outcome.stop, outcome.step].map((value) =>
        valueWords(value, session),
      );
      return result(`from ${start} to ${stop} in steps of ${step}`);
    }
    case 'no value':
      return problemNote(outcome.problem);
    case 'none': {
      const words = typeWords(type, session);
      return words === '' ? undefined : { kind: 'remark', text: words };
    }
  }
}

function result(text: string): Note {
  return { kind: 'result', text };
}

function verdictWords(verdict: Verdict, session: Session): string {
  const { holds, demand, capacity, outOfRange } = verdict;
  const word = `${holds ? 'holds' : 'fails'}${outOfRange ? `, ${outOfRange.message}` : ''}`;
  const near = shareOf(verdict);
  const share = near === undefined ? '' : `${writeUtilisation(near, holds)} `;
  if (!demand || !capacity) return `${share}${word}`;
  return `demand ${valueWords(demand, session)}, capacity ${valueWords(capacity, session)}: ${share}${word}`;
}

const unfinishedAnywhere: ReadonlySet<ProblemCode> = new Set([
  'formula-empty',
  'formula-ends-early',
  'parenthesis-not-closed',
  'text-not-closed',
]);
const unfinishedAtCaret: ReadonlySet<ProblemCode> = new Set([
  'argument-count',
  'argument-missing',
  'formula-unexpected',
]);
/** A word that means nothing yet, and may become one of those listed. */
const unfinishedWord: ReadonlySet<ProblemCode> = new Set([
  'function-unknown',
  'function-without-call',
  'name-unknown',
  'table-as-value',
  'unit-ambiguous',
  'unit-slip',
  'unit-unknown',
]);

/** Whether a word that ends at the caret means nothing yet. */
export function isWordUnknown({ problems }: Trial, caret: number): boolean {
  return problems.some(({ code, to }) => unfinishedWord.has(code) && to === caret);
}

function isUnfinished({ code, from, to }: Problem, text: string, { caret, listed }: Writing): boolean {
  if (unfinishedAnywhere.has(code)) return true;
  if (from > caret || caret > to + 1) return false;
  if (unfinishedWord.has(code)) return listed;
  // After a number and a space its unit is due.
  return unfinishedAtCaret.has(code) || /\d\s+$/.test(text.slice(0, caret));
}

function callNote(text: string, caret: number): Note | undefined {
  const { call } = standingAt(text, caret);
  const entry = call && findFunction(call.name);
  return entry && { kind: 'remark', text: signatureOf(entry), hint: entry.help };
}
