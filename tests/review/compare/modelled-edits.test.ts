import fc from 'fast-check';
import { expect, test } from 'vitest';
import { templateBook } from '../../../src/cli/books.ts';
import {
  applyEdit,
  type Book,
  type Cell,
  cellsOfColumn,
  type Edit,
  insertRow,
  insertTableRows,
  moveRow,
  moveTableRows,
  type Row,
  removeRow,
  removeTableRows,
  type Sheet,
  setCells,
  setEntry,
  setFormula,
  setRowField,
  setSheetField,
  setTitle,
  type Table,
} from '../../../src/document/index.ts';
import { type Notebook, openNotebook, type Result } from '../../../src/notebook/index.ts';
import { compareBooks, type Difference } from '../../../src/review/index.ts';

const SEED = 20_261_130;
const start = templateBook('debris-haul');
const before = openNotebook(start);

/** An edit, what the list of changes must say of it, and the id that results name as their cause. */
interface Modelled {
  readonly edit: Edit;
  readonly said: readonly string[];
  readonly cause: string;
  /** What no other edit of one run may touch. */
  readonly claims: string;
}

interface Dice {
  readonly kind: number;
  readonly sheet: number;
  readonly where: number;
  readonly what: number;
}

const dice: fc.Arbitrary<Dice> = fc.record({
  kind: fc.nat(1000),
  sheet: fc.nat(1000),
  where: fc.nat(1000),
  what: fc.nat(1000),
});

const of = <Item>(items: readonly Item[], at: number): Item | undefined => items[at % items.length];

interface Line {
  readonly at: { readonly sheet: string; readonly part: string; readonly row: string };
  readonly id: string;
  readonly row: Row;
  readonly index: number;
  readonly length: number;
}

function linesOf({ key, parts }: Sheet): readonly Line[] {
  return parts.flatMap((part) =>
    part.kind !== 'rows'
      ? []
      : part.rows.map((row, index) => ({
          at: { sheet: key, part: part.id, row: row.id },
          id: `${key}.${row.name}`,
          row,
          index,
          length: part.rows.length,
        })),
  );
}

type Maker = (sheet: Sheet, toss: Dice) => Modelled | undefined;

const lineOf = (sheet: Sheet, { where }: Dice, fits: (line: Line) => boolean): Line | undefined =>
  of(linesOf(sheet).filter(fits), where);

const entered: Maker = (sheet, toss) => {
  const line = lineOf(sheet, toss, ({ row }) => row.kind === 'given' && /[1-8]/.test(row.entry));
  if (line?.row.kind !== 'given') return undefined;
  const { entry } = line.row;
  const next = entry.replace(/[1-8]/, (digit) => String(Number(digit) + 1));
  return {
    edit: setEntry(line.at, next),
    said: [`${line.id} entry ${entry} > ${next}`],
    cause: line.id,
    claims: line.at.part,
  };
};

const described =
  (field: 'label' | 'reference' | 'note'): Maker =>
  (sheet, toss) => {
    const line = lineOf(sheet, toss, () => true);
    if (!line) return undefined;
    const next = `words ${toss.what}`;
    const said = [`${line.id} ${field} ${line.row[field] ?? 'none'} > ${next}`];
    return { edit: setRowField(line.at, field, next), said, cause: 'none', claims: line.at.part };
  };

const computed: Maker = (sheet, toss) => {
  const line = lineOf(
    sheet,
    toss,
    ({ row }) => row.kind === 'calc' && row.formula !== undefined && !row.link,
  );
  if (line?.row.kind !== 'calc' || line.row.formula === undefined) return undefined;
  const { formula } = line.row;
  const next = `1.0${toss.what % 9}1 * (${formula})`;
  return {
    edit: setFormula(line.at, next),
    said: [`${line.id} formula ${formula} > ${next}`],
    cause: line.id,
    claims: line.at.part,
  };
};

const removed: Maker = (sheet, toss) => {
  const line = lineOf(sheet, toss, () => true);
  return (
    line && { edit: removeRow(line.at), said: [`removed ${line.id}`], cause: line.id, claims: line.at.part }
  );
};

const inserted: Maker = (sheet, toss) => {
  const line = lineOf(sheet, toss, () => true);
  if (!line) return undefined;
  const name = `new_${toss.what}`;
  const row = { id: `id-${name}`, kind: 'given', name, entry: '1 m' } as const;
  return {
    edit: insertRow(line.at, line.index, row),
    said: [`added ${sheet.key}.${name}`],
    cause: `${sheet.key}.${name}`,
    claims: line.at.part,
  };
};

/** Two places or more: of neighbours that change places either could be called the one that moved. */
const moved: Maker = (sheet, toss) => {
  const line = lineOf(sheet, toss, ({ length }) => length > 4);
  if (!line) return undefined;
  const to = line.index < line.length / 2 ? line.index + 2 : line.index - 2;
  return { edit: moveRow(line.at, to), said: [`moved ${line.id}`], cause: 'none', claims: line.at.part };
};

interface Listed {
  readonly table: Table;
  readonly length: number;
  readonly id: string;
  readonly at: { readonly sheet: string; readonly table: string };
}

function tableOf({ key, parts }: Sheet, { where }: Dice, least: number): Listed | undefined {
  const all = parts.flatMap((table) =>
    table.kind === 'table' && table.length !== undefined && table.length >= least
      ? [{ table, length: table.length, id: `${key}.${table.name}`, at: { sheet: key, table: table.id } }]
      : [],
  );
  return of(all, where);
}

const words = (cell: Cell): string => (cell === null ? 'blank' : String(cell));

const cells: Maker = (sheet, toss) => {
  const found = tableOf(sheet, toss, 2);
  const column =
    found &&
    of(
      found.table.columns.filter(({ kind }) => kind === 'given'),
      toss.what,
    );
  if (!found || column?.kind !== 'given') return undefined;
  const row = toss.kind % found.length;
  const old = cellsOfColumn(column)[row] ?? null;
  const next = column.type === 'text' ? `text ${toss.what}` : 0.25 + toss.what / 10_000;
  const id = `${found.id}.${column.name}`;
  return {
    edit: setCells({ ...found.at, column: column.id }, row, [next]),
    said: [`cell ${id} ${row} ${words(old)} > ${words(next)}`],
    cause: id,
    claims: found.table.id,
  };
};

const rowsCame: Maker = (sheet, toss) => {
  const found = tableOf(sheet, toss, 2);
  if (!found) return undefined;
  const from = toss.what % (found.length + 1);
  return {
    edit: insertTableRows(found.at, found.table, from, { length: 2, cells: {} }),
    said: [`added ${found.id} row ${from}`, `added ${found.id} row ${from + 1}`],
    cause: found.id,
    claims: found.table.id,
  };
};

const rowsWent: Maker = (sheet, toss) => {
  const found = tableOf(sheet, toss, 3);
  if (!found) return undefined;
  const from = toss.what % found.length;
  return {
    edit: removeTableRows(found.at, from, 1),
    said: [`removed ${found.id} row ${from}`],
    cause: found.id,
    claims: found.table.id,
  };
};

const rowMoved: Maker = (sheet, toss) => {
  const found = tableOf(sheet, toss, 3);
  if (!found) return undefined;
  return {
    edit: moveTableRows(found.at, found.table, 0, 1, 2),
    said: [`moved ${found.id} row 0`],
    cause: found.id,
    claims: found.table.id,
  };
};

const MAKERS: readonly Maker[] = [
  entered,
  entered,
  entered,
  described('label'),
  described('reference'),
  described('note'),
  computed,
  computed,
  removed,
  inserted,
  moved,
  cells,
  cells,
  rowsCame,
  rowsWent,
  rowMoved,
  ({ key, title }, { what }) => ({
    edit: setSheetField(key, 'title', `title ${what}`),
    said: [`${key} title ${title} > title ${what}`],
    cause: 'none',
    claims: `title of ${key}`,
  }),
  (_, { what }) => ({
    edit: setTitle('revision', `${what}`),
    said: [`title.revision ${start.title.revision || 'blank'} > ${what}`],
    cause: 'none',
    claims: 'revision',
  }),
];

/** Edits that do not touch one another. */
function plan(tosses: readonly Dice[]): readonly Modelled[] {
  const claimed = new Set<string>();
  return tosses.flatMap((toss) => {
    const sheet = of(start.sheets, toss.sheet);
    const made = sheet && of(MAKERS, toss.kind)?.(sheet, toss);
    if (!made || claimed.has(made.claims)) return [];
    claimed.add(made.claims);
    return [made];
  });
}

function after(edits: readonly Modelled[]): Book {
  return edits.reduce((book, { edit }) => {
    const applied = applyEdit(book, edit);
    if (!applied.ok) throw new Error(applied.problems[0]?.message);
    return applied.value.book;
  }, start);
}

/** An edit as the comparison told it, in the words of the model; undefined for what followed. */
function saidOf(one: Difference): string | undefined {
  const value = (field: unknown): string =>
    field === undefined
      ? 'none'
      : field === ''
        ? 'blank'
        : typeof field === 'string'
          ? field
          : JSON.stringify(field);
  if (one.kind === 'book') return `${one.field} ${value(one.from)} > ${value(one.to)}`;
  if ('causes' in one) return undefined;
  const { before: old, after: next, kind } = one.subject;
  const place = old ?? next;
  const row = kind === 'row' ? ` row ${place?.index}` : '';
  if (one.kind === 'field') return `${place?.id} ${one.field} ${value(one.from)} > ${value(one.to)}`;
  if (one.kind === 'cell') return `cell ${place?.id} ${place?.index} ${words(one.from)} > ${words(one.to)}`;
  return `${one.kind} ${place?.id}${row}`;
}

/** A value as a model holds it: rounding is no difference, nor why there is none. */
function plain(result: Result): string {
  if (result.status !== 'ok') return result.status;
  const { value } = result;
  if (value.kind === 'number') return `${value.si.toPrecision(10)} ${value.unit.dimension.key}`;
  return value.kind === 'text' ? value.text : String(value.truth);
}

const lineIds = (notebook: Notebook): readonly string[] =>
  [...notebook.model.items.values()].flatMap((item) => (item.kind === 'formula' ? [item.id] : []));

test('what is told is what was edited, each result that differs, and causes that are enough', {
  timeout: 240_000,
}, () => {
  const counts = { edits: 0, results: 0, tried: 0 };
  fc.assert(
    fc.property(fc.array(dice, { minLength: 3, maxLength: 14 }), fc.nat(1000), (tosses, pick) => {
      const edits = plan(tosses);
      const next = openNotebook(after(edits));
      const { differences } = compareBooks(before, next);
      const said = differences.flatMap((one) => saidOf(one) ?? []);
      expect(said.toSorted()).toEqual(edits.flatMap((one) => one.said).toSorted());
      counts.edits += edits.length;

      const results = differences.filter((one) => one.kind === 'result' || one.kind === 'check');
      const told = new Set(results.map(({ subject }) => subject.after?.id));
      for (const id of lineIds(next)) {
        if (!before.model.items.has(id)) continue;
        if (plain(before.result(id)) !== plain(next.result(id))) expect(told, id).toContain(id);
      }
      counts.results += results.length;

      // Only what is named as a cause is edited: the result must come out as with all edits.
      const one = of(results, pick);
      const id = one?.subject.after?.id;
      if (!one || id === undefined || one.causes.more) return;
      const causes = new Set(one.causes.list.map(({ subject }) => subject?.after?.id ?? subject?.before?.id));
      const alone = openNotebook(after(edits.filter(({ cause }) => causes.has(cause))));
      expect(plain(alone.result(id)), `${id} from ${[...causes].join()}`).toBe(plain(next.result(id)));
      // And without them it must be what it was.
      const others = openNotebook(after(edits.filter(({ cause }) => !causes.has(cause))));
      expect(plain(others.result(id)), id).toBe(plain(before.result(id)));
      counts.tried += 1;
    }),
    { seed: SEED, numRuns: 15, endOnFailure: true },
  );
  expect(counts.edits).toBeGreaterThan(60);
  expect(counts.results).toBeGreaterThan(60);
  expect(counts.tried).toBeGreaterThan(6);
});
