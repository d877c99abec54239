import type { Attributes, Markup } from '../../markup/index.ts';
import { coordinate, tag } from './markup.ts';

/** A run of letters set in one way: plain text, a slanted symbol, what stands below it, or text that matters. */
interface Run {
  readonly text: string;
  readonly set: 'text' | 'symbol' | 'below' | 'strong';
}
/** Words of a label: runs one after another. */
export type Words = readonly Run[];

/** The size of letters in labels, in units of the drawing. */
export const LETTER = 12.5;
const BELOW = 0.74;

/** Plain words. */
export function text(words: string): Words {
  return [{ text: words, set: 'text' }];
}

/** Words that matter. */
export function strong(words: string): Words {
  return [{ text: words, set: 'strong' }];
}

/** A name as mathematics sets it: slanted letters, what follows `_` below, `'` as a prime; `a.b` is `b`. */
export function symbol(name: string): Words {
  const local = name.slice(name.lastIndexOf('.') + 1);
  const [head = '', ...below] = local.split('_');
  // A word that serves as a name is set as a word.
  const base: Run = { text: head.replaceAll("'", '′'), set: head.length > 3 ? 'text' : 'symbol' };
  const under = below
    .filter((part) => part !== '')
    .map((part) => part.replaceAll("'", '′'))
    .join(', ');
  return under === '' ? [base] : [base, { text: under, set: 'below' }];
}

/** About how wide the words are, in units of the drawing: there is no page to measure on. */
export function wordsWidth(words: Words, size = LETTER): number {
  return words.reduce((sum, run) => sum + runWidth(run) * size * (run.set === 'below' ? BELOW : 1), 0);
}

/** About how wide plain words are in letters of a size; rounded up a little. */
export function plainWidth(words: string, size: number): number {
  return wordsWidth(text(words), size);
}

function runWidth(run: Run): number {
  let em = 0;
  for (const letter of run.text) em += letterWidth(letter);
  return em * (run.set === 'strong' ? 1.05 : 1);
}

/** Widths of a humanist sans serif in em, rounded up a little, so that another typeface fits as well. */
function letterWidth(letter: string): number {
  if (/[\u2009\u202f .,:;'’′|ijl!()[\]]/.test(letter)) return 0.29;
  if (/[frtI/-]/.test(letter)) return 0.37;
  if (/[mwMW%@—]/.test(letter)) return 0.84;
  if (/\p{Lu}/u.test(letter)) return 0.61;
  if (/[\u2e80-\uffff]/.test(letter)) return 1;
  return 0.53;
}

const CLASS: Readonly<Record<Run['set'], string | undefined>> = {
  text: undefined,
  symbol: 'symbol',
  below: 'below',
  strong: 'strong',
};

/** The words as a text element; `anchor` is the end that `x` stands for. */
export function textElement(
  words: Words,
  place: { readonly x: number; readonly y: number; readonly anchor?: 'start' | 'middle' | 'end' },
  attributes: Attributes = {},
): Markup {
  let lowered = false;
  const runs = words.map((run) => {
    const shift = run.set === 'below' ? (lowered ? undefined : 3) : lowered ? -3 : undefined;
    lowered = run.set === 'below';
    if (run.set === 'text' && shift === undefined) return run.text;
    return tag('tspan', { class: CLASS[run.set], dy: shift }, run.text);
  });
  const { x, y, anchor = 'start' } = place;
  return tag(
    'text',
    {
      x: coordinate(x),
      y: coordinate(y),
      'text-anchor': anchor === 'start' ? undefined : anchor,
      ...attributes,
    },
    runs,
  );
}

/** Words on as many lines as they take in a width; a word longer than that has a line of its own. */
export function wrapped(words: string, width: number): readonly string[] {
  const lines: string[] = [];
  for (const word of words.split(/\s+/).filter((one) => one !== '')) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last === undefined || wordsWidth(text(longer)) > width) lines.push(word);
    else lines[lines.length - 1] = longer;
  }
  return lines;
}
