import { type Book, blankBook, type Row } from '../../src/document/index.ts';
import { openNotebook, recheckProgram } from '../../src/notebook/index.ts';
import type { EngineValues, RecheckProgram } from '../../src/recheck/index.ts';

type Parts = Book['sheets'][number]['parts'];

/** Lines of a sheet `s` as a test writes them: an entry, or a formula after `=`; the unit after the name in brackets. */
export function linesOf(lines: Readonly<Record<string, string>>): readonly Row[] {
  return Object.entries(lines).map(([key, text], at): Row => {
    const [, name = key, unit] = /^(\S+)(?: \[(.*)\])?$/.exec(key) ?? [];
    const base = { id: `r${at}`, name, ...(unit !== undefined && { unit }) };
    return text.startsWith('=')
      ? { ...base, kind: 'calc', formula: text.slice(1) }
      : { ...base, kind: 'given', entry: text, optional: true };
  });
}

/** A book of one sheet `s`: its lines, then its tables. */
export function bookOf(lines: Readonly<Record<string, string>>, ...tables: Parts): Book {
  const rows = { id: 'rows', kind: 'rows' as const, rows: linesOf(lines) };
  return { ...blankBook(), sheets: [{ key: 's', title: '', parts: [rows, ...tables] }] };
}

/** The program of a book and its values. */
export function computed(book: Book): { readonly program: RecheckProgram; readonly values: EngineValues } {
  return recheckProgram(openNotebook(book));
}

/** The engine's values with one of them another. */
export function instead(
  values: EngineValues,
  other: Readonly<Record<string, ReturnType<EngineValues>>>,
): EngineValues {
  return (id, row) => {
    const key = row === undefined ? id : `${id} ${row}`;
    return key in other ? other[key] : values(id, row);
  };
}
