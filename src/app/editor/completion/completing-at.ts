import { standingAt } from './call-at.ts';

/** What a person is in the middle of writing, and where it began. */
export type Completing =
  /** A name or a function, perhaps only its first letters, perhaps nothing yet. */
  | { readonly kind: 'name'; readonly from: number }
  /** The unit of a number that begins at `number`; `inside`: within the parentheses of a compound unit. */
  | { readonly kind: 'unit'; readonly from: number; readonly number: number; readonly inside: boolean }
  /** A text in quotation marks; `from` is behind the first of them. */
  | { readonly kind: 'text'; readonly from: number };

const number = String.raw`(?<![\p{L}\d_'.])(?:\d[\d.]*|\.\d+)(?:[eE][+-]?\d+)?`;
const unitLetters = String.raw`[\p{L}\p{Sc}°%‰]*`;
const afterNumber = new RegExp(`${number}\\s+(${unitLetters})$`, 'u');
const inUnitGroup = new RegExp(`${number}\\s*\\([^()]*?(${unitLetters})$`, 'u');
const word = /\p{L}[\p{L}\d_'.]*$/u;

/** What is being written at a place of a formula. */
export function completingAt(text: string, at: number): Completing {
  const { quote } = standingAt(text, at);
  if (quote !== undefined) return { kind: 'text', from: quote + 1 };
  const before = text.slice(0, at);
  for (const [pattern, inside] of [
    [afterNumber, false],
    [inUnitGroup, true],
  ] as const) {
    const found = pattern.exec(before);
    if (found) return { kind: 'unit', from: at - (found[1]?.length ?? 0), number: found.index, inside };
  }
  return { kind: 'name', from: at - (word.exec(before)?.[0].length ?? 0) };
}
