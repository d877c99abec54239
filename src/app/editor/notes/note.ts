import type { Fix, Problem } from '../../../diagnostics/index.ts';

/**
 * The line below a cell that is being edited. `result`: what would come of it; `problem`: what is wrong; `warning`:
 * what to know of it; `remark`: anything else; `refused`: as a problem, and it cannot be taken in.
 */
export interface Note {
  readonly kind: 'result' | 'problem' | 'refused' | 'warning' | 'remark';
  readonly text: string;
  /** What would mend it. */
  readonly hint?: string;
  /** Remedies that put it right at one key. */
  readonly fixes?: readonly Fix[];
  /** What else may become of what is typed, at one key where no remedy has it: a line of another kind. */
  readonly offer?: string;
}

/** A problem as the line below. */
export function problemNote(found: Problem, kind?: 'refused' | 'remark'): Note {
  const [hint] = found.hints;
  return {
    kind: kind ?? (found.severity === 'warning' ? 'warning' : 'problem'),
    text: found.message,
    ...(hint !== undefined && { hint }),
    fixes: found.fixes,
  };
}

/** What a remedy does, in words: it puts in what it is called, or is called what it does. */
export function fixWords({ label, insert }: Fix): string {
  return label === insert ? `write ${insert}` : label;
}

/** A text with a remedy applied. */
export function applyFix(text: string, { from, to, insert }: Fix): string {
  return text.slice(0, from) + insert + text.slice(to);
}

/** What stands below to be taken, the first by the key Alt+Enter: the offer behind all remedies but that to keep a formula as a text. */
export function takeable({ fixes = [], offer }: Note): readonly (Fix | 'offer')[] {
  if (offer === undefined) return fixes;
  return fixes.every(({ insert }) => insert.startsWith('"')) ? ['offer', ...fixes] : [...fixes, 'offer'];
}
