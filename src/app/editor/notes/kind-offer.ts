import { otherKind, type TypedValue } from '../../editing/cells/other-kind.ts';
import type { Session } from '../../session/session.ts';
import { formulaNote } from '../formula/formula-note.ts';
import type { Note } from './note.ts';

/**
 * The line below a value, with the offer to make the line one of the other kind where what is typed is meant for that:
 * a formula on a given, a value alone on a calculated line. On a blank line nothing is offered: Enter does it, and the
 * line below says so.
 */
export function withKindOffer(session: Session, typed: TypedValue, note: Note | undefined): Note | undefined {
  const other = otherKind(session.notebook, typed);
  if (!other) return note;
  const { row, trial } = other;
  const words = row.kind === 'calc' ? 'a calculated line' : 'a given value';
  const comesTo = trial && formulaNote(trial, session);
  if (other.decided) {
    const hint = `Enter makes this line ${words}`;
    // What would mend the formula counts from its own first letter, and is offered once it stands there.
    const { fixes: _, ...plain } = comesTo ??
      note ?? { kind: 'remark', text: row.kind === 'calc' ? 'a formula' : 'a value' };
    return { ...plain, hint };
  }
  const result = comesTo?.kind === 'result' ? `: ${comesTo.text}` : '';
  return { ...(note ?? { kind: 'remark', text: '' }), offer: `make this line ${words}${result}` };
}
