import { existsSync, readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { displayedUnit, unitOfLimits } from '../../../../src/app/editing/cells/carry-unit.ts';
import { numberOnScreen } from '../../../../src/app/editing/cells/number-on-screen.ts';
import type { Session } from '../../../../src/app/session/session.ts';
import { lineBody } from '../../../../src/app/sheet/line/line-body.ts';
import type { CellPlace } from '../../../../src/app/view-model/place.ts';
import {
  type Book,
  type Edit,
  findSheet,
  openBook,
  setEntry,
  setRowField,
} from '../../../../src/document/index.ts';
import { columnView } from '../../../../src/record/values/cell-view.ts';
import type { UnitsView } from '../../../../src/record/values/units-view.ts';
import { isBareNumber, readUnit, toSI, unitInPrint } from '../../../../src/units/index.ts';
import { computedSession } from '../../computed-session.ts';
import { at, smallBook } from '../../small-book.ts';

const SEED = 20_261_162;
console.log(`units beside a field: numbers are drawn from seed ${SEED}`);

const templates = new URL('../../../../templates/', import.meta.url);
const ids = readdirSync(templates).filter((id) => existsSync(new URL(`${id}/book.quaybook.json`, templates)));
const views: readonly UnitsView[] = ['written', 'SI', 'US'];

function shipped(id: string): Book {
  const opened = openBook(readFileSync(new URL(`${id}/book.quaybook.json`, templates), 'utf8'));
  if (!opened.ok) throw new Error(`the book ${id} does not open`);
  return opened.value.book;
}

const room = { beside: 20, below: 60, numbers: 1, result: 6, across: 600 };

/** Given lines and cells of given columns that hold a number, without dates. */
function givenPlaces({ notebook }: Session): readonly CellPlace[] {
  return notebook.book.sheets.flatMap((sheet) =>
    sheet.parts.flatMap((part): readonly CellPlace[] => {
      if (part.kind === 'rows')
        return part.rows
          .filter((row) => row.kind === 'given' && isNumber(`${sheet.key}.${row.name}`))
          .map(({ id }) => ({ sheet: sheet.key, part: part.id, item: id, field: 'value' }));
      if (part.kind !== 'table') return [];
      const rows = Math.min(part.length ?? 0, 3);
      return part.columns
        .filter((column) => column.kind === 'given' && (column.type ?? 'number') === 'number')
        .flatMap(({ id }) =>
          Array.from({ length: rows }, (_, row) => ({
            sheet: sheet.key,
            part: part.id,
            item: `r${row}`,
            field: id,
          })),
        );
    }),
  );

  function isNumber(id: string): boolean {
    const result = notebook.result(id);
    return result.status === 'ok' && result.value.kind === 'number' && result.value.unit.point !== 'date';
  }
}

/** What stands beside a place and in it, as the page draws it, and its value in SI. */
function shownAt(session: Session, place: CellPlace) {
  const { notebook, units } = session;
  const part = findSheet(notebook.book, place.sheet)?.parts.find(({ id }) => id === place.part);
  if (part?.kind === 'rows') {
    const source = part.rows.find(({ id }) => id === place.item);
    if (source?.kind !== 'given') throw new Error(`${place.item} is no given line`);
    const item = notebook.model.items.get(`${place.sheet}.${source.name}`);
    const { unit } = lineBody({
      session,
      sheet: place.sheet,
      source,
      item,
      full: false,
      numbers: false,
      paper: undefined,
      room,
    });
    const result = notebook.result(`${place.sheet}.${source.name}`);
    const si = result.status === 'ok' && result.value.kind === 'number' ? result.value.si : undefined;
    return { unit, si, number: numberOnScreen(notebook, place, units) };
  }
  if (part?.kind !== 'table') throw new Error(`${place.part} holds no numbers`);
  const column = part.columns.find(({ id }) => id === place.field);
  if (!column) throw new Error(`${part.name} has no such column`);
  const id = `${place.sheet}.${part.name}.${column.name}`;
  const view = columnView(notebook, id, column, units);
  const row = Number(place.item.slice(1));
  const result = notebook.column(id);
  return {
    unit: unitInPrint(view.unit),
    si: result.status === 'ok' ? result.reading.values[row] : undefined,
    number: view.at(row).text,
  };
}

/** A number without what groups its digits, with the minus that is typed. */
const typedForm = (number: string): string => number.replace(/[\s\u202f\u00a0,]/g, '').replace('−', '-');

function type(session: Session, place: CellPlace, text: string): void {
  expect(session.beginEdit(place, text)).toBe(true);
  session.changeDraft(text);
  const done = session.endEdit('enter');
  // What is long to compute is left for later on the page.
  session.notebook.proceed();
  const { remarks } = session.hand ?? {};
  session.endEdit('escape');
  expect(done, `${text}: ${remarks?.join('; ')}`).toBe(true);
}

describe.each(ids)('%s', (id) => {
  let book: Book;
  beforeAll(() => {
    book = shipped(id);
  });

  test.each(views)('the number shown, typed again, changes nothing: %s', (view) => {
    const session = computedSession(book, id);
    session.setUnits(view);
    const before = session.notebook.book;
    let typed = 0;
    for (const place of givenPlaces(session)) {
      const { number } = shownAt(session, place);
      if (number === undefined || !isBareNumber(typedForm(number))) continue;
      typed += 1;
      type(session, place, typedForm(number));
      expect(session.notebook.book, `${JSON.stringify(place)} ${number}`).toBe(before);
    }
    expect(typed).toBeGreaterThan(20);
  });

  test.each(views)(
    'a number typed is so many of the unit shown beside it: %s',
    { timeout: 300_000 },
    (view) => {
      const session = computedSession(book, id);
      session.setUnits(view);
      const places = givenPlaces(session);
      fc.assert(
        fc.property(fc.constantFrom(...places), fc.integer({ min: 2, max: 98 }), (place, n) => {
          const { unit } = shownAt(session, place);
          expect(unitInPrint(displayedUnit(session.notebook, place, view) ?? ''), 'beside the field').toMatch(
            unit === '' ? /^(-|)$/ : new RegExp(`^${unit.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`),
          );
          const read = readUnit(unit === '' ? '-' : unit, session.notebook.model.registry);
          if (!read.ok) throw new Error(`the unit shown, ${unit}, cannot be read`);
          type(session, place, `${n}`);
          const after = shownAt(session, place);
          const wanted = toSI(n, read.value);
          expect(
            Math.abs((after.si ?? Number.NaN) - wanted),
            `${n} ${unit} at ${JSON.stringify(place)}`,
          ).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(wanted), 1e-12));
          expect(after.unit).toBe(unit);
          expect(Number(typedForm(after.number ?? ''))).toBeCloseTo(n, 3);
          session.undo();
        }),
        { seed: SEED, numRuns: 60 },
      );
    },
  );
});

describe('a line whose entry brought its unit', () => {
  const place = at('p2', 'r1', 'value');
  const row = { sheet: 'beam', part: 'p2', row: 'r1' };
  const withoutUnit: readonly Edit[] = [setRowField(row, 'unit', undefined), setEntry(row, '60 in')];

  test('has the next number in it', () => {
    const session = computedSession(smallBook());
    for (const edit of withoutUnit) session.apply(edit);
    type(session, place, '62');
    // An inch is 0.0254 m.
    expect(shownAt(session, place)).toMatchObject({ unit: 'in', number: '62' });
    expect(shownAt(session, place).si).toBeCloseTo(62 * 0.0254, 12);
  });

  test('names it beside its limits, and other lines their own', () => {
    const session = computedSession(smallBook());
    expect(unitOfLimits(session.notebook, place)).toBe('m');
    session.setUnits('US');
    expect(unitOfLimits(session.notebook, place)).toBe('m');
    for (const edit of withoutUnit) session.apply(edit);
    expect(unitOfLimits(session.notebook, place)).toBe('in');
    expect(unitOfLimits(session.notebook, at('p3', 'head', 'k2'))).toBe('m');
    expect(unitOfLimits(session.notebook, at('p3', 'head', 'k3'))).toBeUndefined();
  });
});
