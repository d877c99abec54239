import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  applyEdit,
  type Book,
  blankBook,
  type Cell,
  cellsOfColumn,
  type Edit,
  insertRow,
  insertTableRows,
  joinEdits,
  moveRow,
  moveTableRows,
  placeEdit,
  removeRow,
  removeTableRows,
  rowIdsOf,
  type SeenEdit,
  seeEdit,
  setCells,
  setColumnField,
  setEntry,
  setUnit,
  stateCell,
  type Table,
} from '../../src/document/index.ts';

const SEED = 20261128;
const UNITS = ['m', 'ft', 'kN'];

/** Rows are told apart by a tag that is typed once and never changed, lines by their ids. */
function start(): Book {
  return {
    ...blankBook(),
    sheets: [
      {
        key: 's',
        title: 'S',
        parts: [
          {
            id: 'p',
            kind: 'rows',
            rows: ['a', 'b', 'c'].map((id, at) => ({
              id,
              kind: 'given',
              name: id,
              entry: `${at}`,
              unit: 'm',
            })),
          },
          {
            id: 't',
            kind: 'table',
            name: 't',
            length: 4,
            columns: [
              { id: 'tag', kind: 'given', name: 'tag', type: 'text', chunks: [['A', 'B', 'C', 'D']] },
              { id: 'h', kind: 'given', name: 'h', unit: 'm', chunks: [[1, 1, 1, null]] },
              { id: 'v', kind: 'calc', name: 'v', formula: 'h * 2', unit: 'm' },
            ],
          },
        ],
      },
    ],
  };
}

const tableOf = (book: Book): Table => book.sheets[0]?.parts.find((part) => part.kind === 'table') as Table;
const linesOf = (book: Book) =>
  book.sheets[0]?.parts.flatMap((part) => (part.kind === 'rows' ? part.rows : [])) ?? [];

const dice = fc.record({
  kind: fc.nat(10),
  at: fc.nat(20),
  to: fc.nat(20),
  count: fc.integer({ min: 1, max: 2 }),
});
type Dice = typeof dice extends fc.Arbitrary<infer One> ? One : never;

/** An edit of a book as chance has it; `fresh` names what no other edit has named. */
function editOf(book: Book, { kind, at, to, count }: Dice, fresh: string): Edit | undefined {
  const table = tableOf(book);
  const length = table.length ?? 0;
  const lines = linesOf(book);
  const line = lines[at % Math.max(1, lines.length)];
  const row = at % Math.max(1, length);
  const most = Math.min(count, length - row);
  const [place, number] = [{ sheet: 's', table: 't' }, Number(fresh)];
  const block = { sheet: 's', part: 'p' };
  switch (kind) {
    case 0:
      return line && setEntry({ ...block, row: line.id }, fresh);
    case 1:
      return line && setUnit({ ...block, row: line.id }, UNITS[to % UNITS.length] ?? '');
    case 2:
      return insertRow(block, at % (lines.length + 1), {
        id: `n${fresh}`,
        kind: 'given',
        name: `n${fresh}`,
        entry: fresh,
        unit: UNITS[to % UNITS.length] ?? '',
      });
    case 3:
      return line && removeRow({ ...block, row: line.id });
    case 4:
      return line && moveRow({ ...block, row: line.id }, to % lines.length);
    case 5:
    case 6:
      return most > 0
        ? setCells(
            { ...place, column: 'h' },
            row,
            Array.from({ length: most }, (_, i) => number + i / 4),
          )
        : undefined;
    case 7:
      return insertTableRows(place, table, at % (length + 1), {
        length: count,
        cells: {
          tag: Array.from({ length: count }, (_, i) => `${fresh}/${i}`),
          h: Array.from({ length: count }, (_, i) => number + i / 4),
        },
      });
    case 8:
      return most > 0 ? removeTableRows(place, row, most) : undefined;
    case 9:
      return most > 0 ? moveTableRows(place, table, row, most, to % (length - most + 1)) : undefined;
    default: {
      const column = table.columns.find(({ id }) => id === 'v');
      const id = rowIdsOf(table).runs[to % Math.max(1, rowIdsOf(table).runs.length)]?.first;
      if (column?.kind !== 'calc' || id === undefined) return undefined;
      const unit = setColumnField({ ...place, column: 'h' }, 'unit', UNITS[to % UNITS.length]);
      return at % 2 === 0
        ? unit
        : stateCell({ ...place, column: 'v' }, column, id, { entry: fresh, reason: 'x' });
    }
  }
}

/** What can be seen in a book: each value in its line or row, with the unit it is read in. */
function pairsOf(book: Book): readonly string[] {
  const table = tableOf(book);
  const cells = (id: string): readonly Cell[] => {
    const column = table.columns.find((one) => one.id === id);
    return column?.kind === 'given' ? cellsOfColumn(column) : [];
  };
  const unit = (id: string): string => {
    const column = table.columns.find((one) => one.id === id);
    return (column && 'unit' in column && column.unit) || '';
  };
  const tags = cells('tag');
  const ids = rowIdsOf(table).runs.flatMap(({ first, count }) =>
    Array.from({ length: count }, (_, i) => first + i),
  );
  const calc = table.columns.find(({ id }) => id === 'v');
  const stated = calc?.kind === 'calc' ? (calc.stated ?? []) : [];
  return [
    ...linesOf(book).map(
      (line) => `line ${line.id}: ${'entry' in line && line.entry} ${'unit' in line && line.unit}`,
    ),
    ...cells('h').map((cell, row) => `row ${tags[row]}: ${cell} ${unit('h')}`),
    ...stated.flatMap(({ row, entry }) => {
      const at = ids.indexOf(row);
      return at < 0 ? [] : [`stated ${tags[at]}: ${entry} ${unit('v')}`];
    }),
  ];
}

interface Made {
  readonly edit: Edit;
  readonly seen: SeenEdit;
}

/** What an author makes of a copy of a book, and everything that was to be seen on the way. */
function author(number: number, thrown: readonly Dice[], seenPairs: Set<string>): readonly Made[] {
  let book = start();
  let ids = (number + 1) * 2 ** 32;
  const fresh = (count: number): number => {
    ids += count;
    return ids - count;
  };
  return thrown.flatMap((one, at) => {
    const edit = editOf(book, one, `${(number + 1) * 1000 + at * 10}`);
    if (!edit) return [];
    const seen = seeEdit(book, edit, fresh);
    if (!seen.ok) return [];
    const placed = placeEdit(book, seen.value);
    if (!placed.ok) throw new Error(`refused on its own book: ${placed.problems[0]?.message}`);
    const applied = applyEdit(book, placed.value);
    if (!applied.ok) return [];
    book = applied.value.book;
    for (const pair of pairsOf(book)) seenPairs.add(pair);
    return [{ edit, seen: seen.value }];
  });
}

const trial = fc.record({
  authors: fc.tuple(...[0, 1, 2].map(() => fc.array(dice, { minLength: 2, maxLength: 5 }))),
  order: fc.array(fc.nat(1000), { minLength: 20, maxLength: 20 }),
});

interface Outcome {
  readonly book: Book;
  readonly seenPairs: ReadonlySet<string>;
  readonly applied: number;
  readonly refused: number;
}

/** The edits of three authors applied to one book in an order by chance; `place` says how each becomes an edit of it. */
function together(
  { authors, order }: typeof trial extends fc.Arbitrary<infer One> ? One : never,
  place: (book: Book, made: Made) => ReturnType<typeof placeEdit>,
): Outcome {
  const seenPairs = new Set(pairsOf(start()));
  const all = authors.flatMap((thrown, number) => author(number, thrown, seenPairs));
  const shuffled = all
    .map((made, at) => ({ made, key: order[at] ?? 0 }))
    .toSorted((a, b) => a.key - b.key)
    .map(({ made }) => made);
  let [book, applied, refused] = [start(), 0, 0];
  for (const made of shuffled) {
    const placed = place(book, made);
    const outcome = placed.ok ? applyEdit(book, placed.value) : placed;
    if (outcome.ok) {
      book = outcome.value.book;
      applied += 1;
    } else {
      expect(outcome.problems[0]?.message).not.toBe('');
      refused += 1;
    }
  }
  return { book, seenPairs, applied, refused };
}

const strayed = ({ book, seenPairs }: Outcome): readonly string[] =>
  pairsOf(book).filter((pair) => !seenPairs.has(pair));

test('edits made apart by three authors never land elsewhere, nor give a value a unit nobody saw beside it', () => {
  let [applied, refused] = [0, 0];
  fc.assert(
    fc.property(trial, (one) => {
      const outcome = together(one, (book, { seen }) => placeEdit(book, JSON.parse(JSON.stringify(seen))));
      applied += outcome.applied;
      refused += outcome.refused;
      expect(strayed(outcome)).toEqual([]);
    }),
    { numRuns: 500, seed: SEED },
  );
  console.log(`edits made apart: seed ${SEED}, ${applied} applied, ${refused} refused`);
  // Most edits do not touch one another.
  expect(applied).toBeGreaterThan(refused);
  expect(refused).toBeGreaterThan(100);
});

test('the same edits by their places alone do land elsewhere', () => {
  let wrong = 0;
  fc.assert(
    fc.property(trial, (one) => {
      const outcome = together(one, (_, { edit }) => ({ ok: true, value: edit }));
      wrong += strayed(outcome).length;
    }),
    { numRuns: 200, seed: SEED },
  );
  expect(wrong).toBeGreaterThan(50);
});

const fresh = (count: number): number => 900 + count;
const seenBy = (book: Book, edit: Edit): SeenEdit => {
  const seen = seeEdit(book, edit, fresh);
  if (!seen.ok) throw new Error(seen.problems[0]?.message);
  return seen.value;
};
const after = (book: Book, ...edits: readonly Edit[]): Book => {
  const applied = applyEdit(book, joinEdits('', edits));
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  return applied.value.book;
};
const codeOf = (book: Book, seen: SeenEdit): string => {
  const placed = placeEdit(book, seen);
  return placed.ok ? 'taken' : (placed.problems[0]?.code ?? '');
};
const at = { sheet: 's', table: 't' };

test('cells follow their rows through rows put in, taken out and moved', () => {
  const seen = seenBy(start(), setCells({ ...at, column: 'h' }, 1, [7, 8]));
  const table = tableOf(start());
  const moved = after(start(), moveTableRows(at, table, 1, 1, 3), removeTableRows(at, 0, 1));
  const placed = placeEdit(moved, seen);
  const book = placed.ok ? after(moved, placed.value) : moved;
  expect(pairsOf(book).filter((pair) => pair.startsWith('row'))).toEqual([
    'row C: 8 m',
    'row D: null m',
    'row B: 7 m',
  ]);
});

test('what is gone or was seen otherwise is refused whole: edit-neighbour-gone, edit-seen-otherwise', () => {
  const cells = seenBy(start(), setCells({ ...at, column: 'h' }, 1, [7, 8]));
  expect(codeOf(after(start(), removeTableRows(at, 2, 1)), cells)).toBe('edit-neighbour-gone');
  expect(codeOf(after(start(), setCells({ ...at, column: 'h' }, 2, [5])), cells)).toBe('edit-seen-otherwise');
  expect(codeOf(after(start(), setColumnField({ ...at, column: 'h' }, 'unit', 'ft')), cells)).toBe(
    'edit-seen-otherwise',
  );
  expect(codeOf(after(start(), setCells({ ...at, column: 'h' }, 0, [5])), cells)).toBe('taken');
  const line = { sheet: 's', part: 'p', row: 'b' };
  const entry = seenBy(start(), setEntry(line, '9'));
  expect(codeOf(after(start(), setUnit(line, 'ft')), entry)).toBe('edit-seen-otherwise');
  expect(codeOf(after(start(), setUnit({ ...line, row: 'a' }, 'ft')), entry)).toBe('taken');
  const unit = seenBy(start(), setUnit(line, 'ft'));
  expect(codeOf(after(start(), setEntry(line, '9')), unit)).toBe('edit-seen-otherwise');
});

test('what takes an edit back, made apart, brings its own row back behind the row it stood behind', () => {
  const removed = applyEdit(start(), removeTableRows(at, 1, 1));
  if (!removed.ok) throw new Error('the row stays');
  const back = seenBy(removed.value.book, removed.value.inverse);
  const table = tableOf(removed.value.book);
  const rows = { length: 1, cells: { tag: ['new'], h: [5] } };
  const changed = after(removed.value.book, insertTableRows(at, table, 0, rows));
  const placed = placeEdit(changed, back);
  if (!placed.ok) throw new Error(placed.problems[0]?.message);
  const book = after(changed, placed.value);
  expect(pairsOf(book).filter((pair) => pair.startsWith('row'))).toEqual([
    'row new: 5 m',
    'row A: 1 m',
    'row B: 1 m',
    'row C: 1 m',
    'row D: null m',
  ]);
  expect(rowIdsOf(tableOf(book)).runs).toEqual([
    { first: 5, count: 1 },
    { first: 1, count: 4 },
  ]);
  // Brought back already, it is not brought back twice.
  expect(codeOf(book, back)).toBe('edit-seen-otherwise');
});
