import { type Diagnostic, setDiagnostics } from '@codemirror/lint';
import { EditorState, type Extension, StateField } from '@codemirror/state';
import type { Trial } from '../../notebook/index.ts';

/** Tries a formula as typed. */
export type Try = (text: string) => Trial;

/** The trial of what the editor holds, kept with its state. */
export interface TrialExtension {
  readonly extension: Extension;
  readonly of: (state: EditorState) => Trial;
}

/** Tries the formula at every change, in the same step that changes it, and underlines what is wrong. */
export function formulaTrial(tryIt: Try): TrialExtension {
  // The transaction and the state ask for the same text: it is tried once.
  let last: Trial | undefined;
  let lastText: string | undefined;
  const tried = (text: string): Trial => {
    if (last && lastText === text) return last;
    last = tryIt(text);
    lastText = text;
    return last;
  };
  const field = StateField.define<Trial>({
    create: (state) => tried(state.doc.toString()),
    update: (value, transaction) => (transaction.docChanged ? tried(transaction.newDoc.toString()) : value),
  });
  const underline = EditorState.transactionExtender.of((transaction) => {
    if (!transaction.docChanged) return null;
    const found = tried(transaction.newDoc.toString());
    const { effects } = setDiagnostics(
      transaction.startState,
      diagnosticsOf(found, transaction.newDoc.length),
    );
    return effects ? { effects } : null;
  });
  return { extension: [field, underline], of: (state) => state.field(field) };
}

/** What is wrong with a tried formula, for the editor to underline; `length` is that of its text. */
export function diagnosticsOf({ problems }: Trial, length: number): readonly Diagnostic[] {
  return problems.map(({ from, to, severity, message, hints }) => ({
    from: Math.min(from, Math.max(length - 1, 0)),
    to: Math.min(Math.max(to, from + 1), length),
    severity,
    message: [message, ...hints].join('; '),
  }));
}
