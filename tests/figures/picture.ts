import { readdirSync, readFileSync } from 'node:fs';
import type { Outcome } from '../../src/diagnostics/index.ts';
import { blankBook, type Cell, type Chart, type Figure, openBook } from '../../src/document/index.ts';
import type { Drawing } from '../../src/figures/index.ts';
import { writeMarkup } from '../../src/markup/index.ts';
import { type Notebook, openNotebook } from '../../src/notebook/index.ts';

/** A table to draw from: its columns by name, each a unit (`text` for texts) and its cells. */
export type TestTable = Readonly<Record<string, readonly [unit: string, cells: readonly Cell[]]>>;

/** A book of one sheet `s` with given lines (entry with its unit), tables and calculated parts as they stand in a book. */
export function notebookOf(
  lines: Readonly<Record<string, string>>,
  tables: Readonly<Record<string, TestTable>> = {},
  more: readonly object[] = [],
): Notebook {
  const rows = Object.entries(lines).map(([name, entry], at) => ({
    id: `l${at}`,
    kind: 'given',
    name,
    entry,
  }));
  const tableParts = Object.entries(tables).map(([name, columns], t) => ({
    id: `t${t}`,
    kind: 'table',
    name,
    length: Object.values(columns)[0]?.[1].length ?? 0,
    columns: Object.entries(columns).map(([column, [unit, cells]], c) => ({
      id: `t${t}c${c}`,
      kind: 'given',
      name: column,
      optional: true,
      ...(unit === 'text' || unit === 'date' ? { type: unit } : { unit }),
      chunks: cells.length === 0 ? [] : [cells],
    })),
  }));
  const parts = [{ id: 'rows', kind: 'rows', rows }, ...tableParts, ...more];
  const book = { ...blankBook(), sheets: [{ key: 's', title: 'Sheet', parts }] };
  return opened(JSON.stringify(book));
}

function opened(text: string): Notebook {
  const read = openBook(text);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return openNotebook(read.value.book);
}

const templates = new URL('../../templates/', import.meta.url);

/** The shipped books. */
export function shippedBooks(): readonly { readonly id: string; readonly text: string }[] {
  return readdirSync(templates).map((id) => ({
    id,
    text: readFileSync(new URL(`${id}/book.quaybook.json`, templates), 'utf8'),
  }));
}

/** A shipped book, its JSON changed before it opens. */
export function shippedNotebook(id: string, change: (json: string) => string = (json) => json): Notebook {
  return opened(change(readFileSync(new URL(`${id}/book.quaybook.json`, templates), 'utf8')));
}

/** A sketch part. */
export function figure(kind: string, cells: Readonly<Record<string, string>>): Figure {
  return { id: 'f1', kind: 'figure', figure: kind, cells };
}

/** A chart part over the table `t`. */
export function chart(form: Chart['form'], x: string, ...y: readonly string[]): Chart {
  return { id: 'c1', kind: 'chart', form, table: 't', x, y: [...y] };
}

/** A drawing with its markup as text. */
export interface Picture extends Omit<Drawing, 'svg'> {
  readonly svg: string;
}

export function asText(drawing: Drawing): Picture {
  return { ...drawing, svg: writeMarkup(drawing.svg) };
}

/** The drawing, or an error that says why there is none. */
export function drawn(outcome: Outcome<Drawing>): Picture {
  if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join('\n'));
  return asText(outcome.value);
}

/** The codes and sentences of what stands in the way of a drawing. */
export function refusals(outcome: Outcome<Drawing>): readonly string[] {
  return outcome.ok ? [] : outcome.problems.map(({ code, message }) => `${code}: ${message}`);
}

/** An element of a drawing: its name, attributes and the text right inside it. */
export interface Shape {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
  readonly n: (attribute: string) => number;
}

/** The elements of a drawing in order; throws where tags do not close as they open. */
export function shapesOf(svg: string): readonly Shape[] {
  const shapes: { name: string; attributes: Record<string, string>; text: string }[] = [];
  const open: (typeof shapes)[number][] = [];
  let rest = svg;
  while (rest !== '') {
    const end = rest.startsWith('<') ? rest.indexOf('>') + 1 : (rest.indexOf('<') + 1 || rest.length + 1) - 1;
    const piece = rest.slice(0, end);
    rest = rest.slice(end);
    if (!piece.startsWith('<')) {
      for (const shape of open) if (shape.name === 'text' || shape === open.at(-1)) shape.text += piece;
    } else if (piece.startsWith('</')) {
      const closed = open.pop();
      if (closed?.name !== piece.slice(2, -1)) throw new Error(`${piece} closes ${closed?.name}`);
    } else {
      const [, name = '', written = '', single] =
        /^<([a-z]+)((?: [\w:-]+="[^"<>]*")*)(\/?)>$/i.exec(piece) ?? [];
      if (name === '') throw new Error(`not sound: ${piece}`);
      const attributes = Object.fromEntries(
        [...written.matchAll(/ ([\w:-]+)="([^"]*)"/g)].map(([, key = '', value = '']) => [key, value]),
      );
      const shape = { name, attributes, text: '' };
      shapes.push(shape);
      if (single !== '/') open.push(shape);
    }
  }
  if (open.length > 0) throw new Error(`${open.length} tags stay open`);
  return shapes.map((shape) => ({ ...shape, n: (attribute) => Number(shape.attributes[attribute]) }));
}

/** The elements with a value of a `data-` attribute. */
export function parts(svg: string, attribute: string, value?: string): readonly Shape[] {
  return shapesOf(svg).filter(({ attributes }) => {
    const own = attributes[`data-${attribute}`];
    return own !== undefined && (value === undefined || own === value);
  });
}

/** The one element of a part. */
export function part(svg: string, value: string): Shape {
  const [only, second] = parts(svg, 'part', value);
  if (!only || second) throw new Error(`the drawing has ${only ? 'several' : 'no'} ${value}`);
  return only;
}

/** The step from the start of a line to its end. */
export function stepOf(line: Shape): { readonly x: number; readonly y: number } {
  return { x: line.n('x2') - line.n('x1'), y: line.n('y2') - line.n('y1') };
}

/** The length of a line. */
export function lengthOf(line: Shape): number {
  const { x, y } = stepOf(line);
  return Math.hypot(x, y);
}

/** The points of a path of straight stretches, one list for each stretch that begins anew. */
export function pointsOf(path: Shape): readonly (readonly { readonly x: number; readonly y: number }[])[] {
  const d = path.attributes.d ?? '';
  return d
    .split('M')
    .filter((stretch) => stretch !== '')
    .map((stretch) =>
      [...stretch.matchAll(/(-?[\d.]+)[ ,](-?[\d.]+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) })),
    );
}
