import { type Markup, none } from '../../markup/index.ts';
import { tag } from './markup.ts';
import { text, textElement } from './words.ts';

/** The width every drawing is made for, in units of the drawing; a page scales it. */
export const PAGE_WIDTH = 720;

/** What a drawing shows, ready to be framed. */
export interface Sketch {
  /** `PAGE_WIDTH` unless the drawing is made for a narrower page. */
  readonly width?: number;
  readonly height: number;
  readonly definitions?: Markup;
  readonly body: Markup;
  /** What was left out and why, one sentence each; they stand below the drawing. */
  readonly notes?: readonly string[];
}

const NOTE_LINE = 17;
const NOTE_LETTERS = 118;

/** The whole drawing as SVG, with its name and its text alternative; ids begin with `id`. */
export function frameSketch(id: string, title: string, description: string, sketch: Sketch): Markup {
  const lines = (sketch.notes ?? []).flatMap((note) => brokenLines(note, NOTE_LETTERS));
  const height = sketch.height + (lines.length === 0 ? 0 : lines.length * NOTE_LINE + 8);
  const notes = lines.map((line, at) =>
    textElement(text(line), { x: 8, y: sketch.height + 12 + at * NOTE_LINE }, { class: 'note' }),
  );
  return tag(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'quay-figure',
      role: 'img',
      fill: 'none',
      'aria-labelledby': `${id}-title ${id}-desc`,
      viewBox: `0 0 ${sketch.width ?? PAGE_WIDTH} ${Math.ceil(height)}`,
    },
    tag('title', { id: `${id}-title` }, title),
    tag('desc', { id: `${id}-desc` }, description),
    sketch.definitions ?? none,
    sketch.body,
    notes,
  );
}

/** A sentence in lines of at most so many letters, broken between words. */
function brokenLines(sentence: string, most: number): readonly string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of sentence.split(' ')) {
    if (current !== '' && current.length + word.length + 1 > most) {
      lines.push(current);
      current = word;
    } else current = current === '' ? word : `${current} ${word}`;
  }
  return [...lines, current];
}
