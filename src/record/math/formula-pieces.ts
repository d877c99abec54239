import type { Syntax } from '../../language/index.ts';
import { textWidth } from './formula-width.ts';

/** A piece of a line: part of the formula's tree, or what is written between parts. */
export type Piece =
  | { readonly kind: 'node'; readonly node: Syntax }
  | { readonly kind: 'sign'; readonly text: string; readonly form: 'prefix' | 'infix' | 'postfix' }
  | { readonly kind: 'words' | 'name'; readonly text: string }
  /** A closing sign with a power above it or a step below it. */
  | { readonly kind: 'raised' | 'lowered'; readonly text: string; readonly node: Syntax };

/** One line of a formula set on several; `indent` and `width` in em of its type. */
export interface FormulaLine {
  readonly indent: number;
  readonly pieces: readonly Piece[];
  readonly width: number;
}

/** What is written in front of a part or behind it. */
export interface Mark {
  readonly pieces: readonly Piece[];
  readonly width: number;
}

/** A sign between two parts. */
export const sign = (text: string): Mark => ({
  pieces: [{ kind: 'sign', text, form: 'infix' }],
  width: text === ';' ? 0.4 : 1.3,
});
/** A sign that belongs to what follows it. */
export const opening = (text: string): Mark => ({
  pieces: [{ kind: 'sign', text, form: 'prefix' }],
  width: text === '−' ? 0.8 : 0.4,
});
/** A sign that belongs to what stands before it. */
export const closing = (text: string): Mark => ({
  pieces: [{ kind: 'sign', text, form: 'postfix' }],
  width: 0.4,
});
/** A closing sign with a power or a step, `width` em wide, at it. */
export const scriptMark = (kind: 'raised' | 'lowered', text: string, node: Syntax, width: number): Mark => ({
  pieces: [{ kind, text, node }],
  width: 0.4 + width,
});
export const words = (text: string): Mark => ({ pieces: [{ kind: 'words', text }], width: textWidth(text) });
/** The name of a function with its open parenthesis. */
export const callMark = (name: string): Mark => ({
  pieces: [
    name === '∑' ? { kind: 'sign', text: name, form: 'prefix' } : { kind: 'name', text: name },
    ...opening('(').pieces,
  ],
  width: textWidth(name) + 0.9,
});

/** A mark as a line of its own. */
export function alone(indent: number, { pieces, width }: Mark): FormulaLine {
  return { indent, pieces, width };
}

/** Lines with a mark in front of the first. */
export function prependMark(lines: readonly FormulaLine[], lead: Mark): readonly FormulaLine[] {
  const [first, ...rest] = lines;
  if (!first) return lines;
  return [{ ...first, pieces: [...lead.pieces, ...first.pieces], width: first.width + lead.width }, ...rest];
}

/** Lines with a mark behind the last. */
export function appendMark(lines: readonly FormulaLine[], end: Mark): readonly FormulaLine[] {
  const last = lines.at(-1);
  if (!last) return lines;
  return [
    ...lines.slice(0, -1),
    { ...last, pieces: [...last.pieces, ...end.pieces], width: last.width + end.width },
  ];
}

/** Lines between two marks, the first at `indent` again. */
export function encloseLines(
  lines: readonly FormulaLine[],
  open: Mark,
  close: Mark,
  indent: number,
): readonly FormulaLine[] {
  const [first, ...rest] = appendMark(prependMark(lines, open), close);
  return first ? [{ ...first, indent }, ...rest] : lines;
}

/** Two lines as one. */
export function joinLines(a: FormulaLine, b: FormulaLine, between = 0): FormulaLine {
  return { indent: a.indent, pieces: [...a.pieces, ...b.pieces], width: a.width + b.width + between };
}
