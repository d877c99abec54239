import type { Column, Row, Sheet } from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import { SOURCE_KINDS, type SourceKind, saysOfItself, sourcesOf } from '../sources.ts';
import { methodsShown } from './methods-shown.ts';
import { sourceOfLine } from './source-of-line.ts';

/** So many letters of a reference fit on one row of the margin, and on the two that a line with a formula has anyway. */
const [ONE_ROW, TWO_ROWS] = [14, 27];

/** What stands beside a mark in the margin, so short that both are on one row. */
const beside: Readonly<Partial<Record<SourceKind, string>>> = {
  'from memory': 'from memory',
  'common practice': 'practice',
  'maker’s data wanted': 'maker’s data',
};

/** The references of a printed sheet: what stands beside a line, and what is listed at the end. */
export interface SheetReferences {
  readonly cite: (reference: string) => string;
  /** In the order of their marks, which count from 1. */
  readonly listed: readonly string[];
}

/** The marks of references by their words, counted from 1. */
export type Marks = ReadonlyMap<string, number>;

/**
 * The marks of a print that has the page of sources: all references but short ones, in the order of that page, which is
 * then the one list for all sheets.
 */
export function marksOfBook(notebook: Notebook): Marks {
  const sources = sourcesOf(notebook);
  const listed = SOURCE_KINDS.flatMap((kind) => sources.filter((source) => source.kind === kind))
    .filter(({ kind, reference }) => kind !== 'stated' && reference.length > ONE_ROW)
    .map(({ reference }) => reference);
  return new Map([...new Set(listed)].map((reference, at) => [reference, at + 1]));
}

/**
 * The references of a sheet as its paper has them. One that is short, or that stands once and is no taller than its line,
 * stands beside it; each other stands once, in a list at the end, and its mark beside its lines. With the marks of a book
 * each has its mark there, and the sheet lists none.
 */
export function sheetReferences(notebook: Notebook, sheet: Sheet, ofBook?: Marks): SheetReferences {
  if (ofBook) return { listed: [], cite: citing(ofBook) };
  const counts = new Map<string, number>();
  for (const reference of allReferences(notebook, sheet))
    counts.set(reference, (counts.get(reference) ?? 0) + 1);
  const listed = [...counts]
    .filter(([{ length }, count]) => length > (count > 1 ? ONE_ROW : TWO_ROWS))
    .map(([reference]) => reference);
  return { listed, cite: citing(new Map(listed.map((reference, at) => [reference, at + 1]))) };
}

function citing(marks: Marks): SheetReferences['cite'] {
  return (reference) => {
    const mark = marks.get(reference);
    if (mark === undefined) return reference;
    // That it is only remembered, or usual, is never left to the list.
    const kind = saysOfItself(reference);
    return [`[${mark}]`, kind && beside[kind]].filter(Boolean).join(' ');
  };
}

/** The references of a sheet's lines and columns in their order. */
function allReferences(notebook: Notebook, { key, parts }: Sheet): readonly string[] {
  const of = (source: Row | Column, id: string): readonly string[] => {
    const item = notebook.model.items.get(id);
    if (item?.kind === 'formula column' && item.methods)
      return methodsShown(notebook, item).map(
        ({ item: { method } }) => method.reference ?? source.reference ?? '',
      );
    return [sourceOfLine(notebook, source, item)];
  };
  return parts
    .flatMap((part) => {
      if (part.kind === 'rows') return part.rows.flatMap((row) => of(row, `${key}.${row.name}`));
      return part.kind === 'table'
        ? part.columns.flatMap((column) => of(column, `${key}.${part.name}.${column.name}`))
        : [];
    })
    .filter((reference) => reference !== '');
}
