import type { NameSyntax, Syntax, Typed } from '../../language/index.ts';
import type { Notebook, PartPlace, Value } from '../../notebook/index.ts';

/** Which of several formulas is worked, and why: the condition or the choice as it is written, and with its numbers. */
export interface BranchNote {
  readonly asked: Syntax;
  readonly put: Syntax;
  readonly answer: 'is so' | 'is not so' | 'chosen';
}

/** What the numbers alone do not say. */
export type WorkedNote = string | BranchNote;

/** What the working of one formula is made with. */
export interface Working {
  readonly notebook: Notebook;
  readonly typedOf: (node: Syntax) => Typed | undefined;
  /** A part with its numbers put in. */
  readonly work: (node: Syntax, place: PartPlace) => Syntax;
  /** A value in place of a part. */
  readonly put: (value: Value) => NameSyntax;
  /** Words in place of a part. */
  readonly say: (words: string) => NameSyntax;
  /** Adds a note; what is within an aggregate has none, or each row would have its own. */
  readonly note: (note: WorkedNote, place: PartPlace) => void;
  /** A value in words. */
  readonly write: (value: Value) => string;
}
