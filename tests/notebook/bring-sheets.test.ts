import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  applyEdit,
  type Book,
  findSheet,
  openBook,
  type Part,
  type Sheet,
  writeBook,
} from '../../src/document/index.ts';
import { bringSheets, type Notebook, openNotebook } from '../../src/notebook/index.ts';

const SEED = 20_261_129;
console.log(`sheets brought: random choices start from seed ${SEED}`);

const SHIPPED = ['bollard-pull', 'debris-haul', 'demo', 'fender-energy', 'pile-bearing'];

function shipped(id: string): Book {
  const path = new URL(`../../templates/${id}/book.quaybook.json`, import.meta.url);
  const opened = openBook(readFileSync(path, 'utf8'));
  if (!opened.ok) throw new Error(`the template ${id} does not open`);
  return opened.value.book;
}

const notebooks = new Map(SHIPPED.map((id) => [id, openNotebook(shipped(id))]));
const notebookOf = (id: string): Notebook => {
  const found = notebooks.get(id);
  if (!found) throw new Error(`no book ${id}`);
  return found;
};

/** What a line, or every row of a column, comes to; where there is none, how it stands. */
function valueAt(notebook: Notebook, id: string): unknown {
  const item = notebook.model.items.get(id);
  if (!item) return `no ${id}`;
  if (item.kind === 'input' || item.kind === 'formula') {
    const result = notebook.result(id);
    if (result.status !== 'ok') return result.status;
    const { value } = result;
    const sides = notebook.verdict(id);
    const both = [sides?.demand?.si, sides?.capacity?.si, sides?.utilisation];
    return value.kind === 'number' ? [value.si] : value.kind === 'text' ? value.text : [value.truth, ...both];
  }
  const column = notebook.column(id);
  if (column.status !== 'ok') return column.status;
  return Array.from({ length: column.reading.length }, (_, row) => {
    const read = column.reading.at(row);
    return read.status === 'ok' ? read.value : read.status;
  });
}

/** Everything with a value on a sheet, as `name` and `table.column`, in its order. */
function namesOn({ parts }: Pick<Sheet, 'parts'>): readonly string[] {
  return parts.flatMap((part: Part) => {
    if (part.kind === 'rows') return part.rows.map(({ name }) => name);
    return part.kind === 'table' ? part.columns.map(({ name }) => `${part.name}.${name}`) : [];
  });
}

/** A sheet without what a book gives it: its key, its ids, its origin, and the formulas that may be spelled otherwise. */
function content(parts: readonly Part[]): string {
  const given = new Set(['id', 'formula', 'applies', 'from', 'cells', 'table', 'by']);
  const named = parts.map((part) => (part.kind === 'table' ? { ...part, name: '' } : part));
  return JSON.stringify(named, (field, value) => (given.has(field) ? typeof value : value));
}

function bring(into: Book, source: Notebook, wanted: readonly string[], index = into.sheets.length) {
  const brought = bringSheets(into, source, wanted, index);
  if (!brought.ok) throw new Error(brought.problems.map(({ message }) => message).join('; '));
  const applied = applyEdit(into, brought.value.edit);
  if (!applied.ok) throw new Error(applied.problems.map(({ message }) => message).join('; '));
  return { ...brought.value, after: applied.value.book, inverse: applied.value.inverse };
}

/** A held value is the nearest that a number in its unit has, so what follows is equal as formulas compare: to a relative 1e-12. */
function expectEqual(name: string, is: unknown, was: unknown, isExact: boolean): void {
  if (isExact || !Array.isArray(is) || !Array.isArray(was) || is.length !== was.length) {
    expect([name, is]).toEqual([name, was]);
    return;
  }
  const settled = is.map((one, at) => {
    const other: unknown = was[at];
    const isNear =
      typeof one === 'number' &&
      typeof other === 'number' &&
      Math.abs(one - other) <= 1e-12 * Math.abs(other);
    return isNear ? other : one;
  });
  expect([name, settled]).toEqual([name, was]);
}

/** Compares both books with what they were before sheets were brought. */
function expectUnchanged(into: Notebook, source: Notebook, brought: ReturnType<typeof bring>): void {
  const isExact = brought.held.length === 0;
  const after = openNotebook(brought.after);
  for (const id of into.model.items.keys()) expect([id, valueAt(after, id)]).toEqual([id, valueAt(into, id)]);
  for (const [was, key] of brought.keys) {
    const before = findSheet(source.book, was);
    const now = findSheet(brought.after, key);
    if (!before || !now) throw new Error(`${was} was not brought as ${key}`);
    const own = now.parts.slice(now.parts.length - before.parts.length);
    const names = namesOn({ parts: own });
    expect(names.length).toBe(namesOn(before).length);
    for (const [at, name] of namesOn(before).entries())
      expectEqual(
        `${was}.${name}`,
        valueAt(after, `${key}.${names[at]}`),
        valueAt(source, `${was}.${name}`),
        isExact,
      );
    // All words, entries, choices, stated values, methods and options are there as they were.
    expect(content(own)).toBe(content(before.parts));
  }
  // What the file says is what the book is.
  const text = writeBook(brought.after);
  const opened = openBook(text);
  expect(opened.ok && opened.value.book).toEqual(brought.after);
  const back = applyEdit(brought.after, brought.inverse);
  expect(back.ok && back.value.book).toEqual(into.book);
}

describe.each(SHIPPED)('into the book %s', (target) => {
  test('all sheets of any shipped book are brought without changing a value', { timeout: 240_000 }, () => {
    for (const id of SHIPPED) {
      const source = notebookOf(id);
      const into = notebookOf(target);
      const all = source.book.sheets.map(({ key }) => key);
      const brought = bring(into.book, source, all, 1);
      expect(brought.held).toEqual([]);
      expectUnchanged(into, source, brought);
    }
  });

  test('so are some of the sheets, with the values they need held', { timeout: 240_000 }, () => {
    let held = 0;
    fc.assert(
      fc.property(fc.constantFrom(...SHIPPED), fc.infiniteStream(fc.boolean()), (id, chance) => {
        const source = notebookOf(id);
        const wanted = source.book.sheets.map(({ key }) => key).filter(() => chance.next().value);
        if (wanted.length === 0) return;
        const brought = bring(notebookOf(target).book, source, wanted);
        held += brought.held.length;
        expectUnchanged(notebookOf(target), source, brought);
      }),
      { seed: SEED, numRuns: 4 },
    );
    expect(held).toBeGreaterThan(8);
  });
});
