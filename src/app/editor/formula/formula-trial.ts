import { type Diagnostic, setDiagnostics } from '@codemirror/lint';
import type { EditorState } from '@codemirror/state';
import type { EditorView } from '@codemirror/view';
import type { Trial } from '../../../notebook/index.ts';

/** For how many milliseconds typing rests before what is wrong is underlined: half a word is not wrong yet. */
const rest = 200;

/** Tries a formula as typed. */
export type Try = (text: string) => Trial;

/** Tries what an editor holds when it is asked, each text once, and underlines what is wrong in it. */
export class FormulaTrial {
  readonly #tryIt: Try;
  #last: { readonly text: string; readonly trial: Trial } | undefined;
  #underlined: Trial | undefined;
  #resting: ReturnType<typeof setTimeout> | undefined;

  constructor(tryIt: Try) {
    this.#tryIt = tryIt;
  }

  of({ doc }: EditorState): Trial {
    const text = doc.toString();
    if (this.#last?.text !== text) this.#last = { text, trial: this.#tryIt(text) };
    return this.#last.trial;
  }

  /** Underlines what is wrong once the typing rests; a letter does not wait for it. */
  underlineAtRest(view: EditorView): void {
    this.stop();
    this.#resting = setTimeout(() => this.underline(view), rest);
  }

  /** Underlines nothing any more. */
  stop(): void {
    clearTimeout(this.#resting);
  }

  underline(view: EditorView): void {
    const trial = this.of(view.state);
    const nothing = trial.problems.length === 0 && (this.#underlined?.problems.length ?? 0) === 0;
    if (trial === this.#underlined || nothing) return;
    this.#underlined = trial;
    view.dispatch(setDiagnostics(view.state, diagnosticsOf(trial, view.state.doc.length)));
  }
}

/** What is wrong with a tried formula, for the editor to underline; `length` is that of its text. */
function diagnosticsOf({ problems }: Trial, length: number): readonly Diagnostic[] {
  return problems.map(({ from, to, severity, message, hints }) => ({
    from: Math.min(from, Math.max(length - 1, 0)),
    to: Math.min(Math.max(to, from + 1), length),
    severity,
    message: [message, ...hints].join('; '),
  }));
}
