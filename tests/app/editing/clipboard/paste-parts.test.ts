import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pasteParts, pickParts } from '../../../../src/app/editing/clipboard/paste-parts.ts';
import type { CellPlace } from '../../../../src/app/view-model/place.ts';
import {
  type Book,
  blankBook,
  openBook,
  openCopied,
  type Part,
  type Row,
} from '../../../../src/document/index.ts';
import { type Notebook, openLinks, openNotebook, takeAlong } from '../../../../src/notebook/index.ts';
import { after, done } from '../applied.ts';

const SEED = 20_261_129;
console.log(`parts copied between books: random selections start from seed ${SEED}`);

function shipped(id: string): Book {
  const path = new URL(`../../../../templates/${id}/book.quaybook.json`, import.meta.url);
  const opened = openBook(readFileSync(path, 'utf8'));
  if (!opened.ok) throw new Error(`the template ${id} does not open`);
  return opened.value.book;
}

/** Every row of a sheet's grid as far as parts are picked by it. */
function placesOn(notebook: Notebook, key: string): readonly CellPlace[] {
  const sheet = notebook.book.sheets.find((one) => one.key === key);
  return (sheet?.parts ?? []).flatMap((part) => [
    { sheet: key, part: part.id, item: '', field: 'title' },
    ...(part.kind === 'rows'
      ? part.rows.map(({ id }) => ({ sheet: key, part: part.id, item: id, field: 'name' }))
      : []),
  ]);
}

const rowsIn = (parts: readonly Part[]): readonly Row[] =>
  parts.flatMap((part) => (part.kind === 'rows' ? part.rows : []));

function numberAt(notebook: Notebook, id: string): unknown {
  const result = notebook.result(id);
  if (result.status !== 'ok') return 'no value';
  const { value } = result;
  return value.kind === 'number' ? value.si : value.kind === 'text' ? value.text : value.truth;
}

/** Copies what is selected on a sheet into a blank book, through the clipboard, and compares every line. */
function copyAcross(
  source: Notebook,
  key: string,
  places: readonly CellPlace[],
  areLines: boolean,
): Notebook | undefined {
  const sheet = source.book.sheets.find((one) => one.key === key);
  if (!sheet) throw new Error(`no sheet ${key}`);
  const parts = pickParts(sheet, places, areLines);
  if (parts.length === 0) return undefined;
  const brought = takeAlong(source, key, parts);
  if (!brought) throw new Error('nothing can be brought');
  const read = done(openCopied(JSON.stringify({ cells: [['']], parts, brought })));
  const [taken] = read.brought?.sheets ?? [];
  if (!read.brought || !taken) throw new Error('what was copied has no sheet');
  const into = blankBook();
  const copied = { book: read.brought, sheet: taken.key, parts: taken.parts };
  const change = done(pasteParts(into, { sheet: 'sheet', place: undefined }, copied, { over: [], areLines }));
  const now = openNotebook(after(into, change.edit));
  const all = rowsIn(now.book.sheets[0]?.parts ?? []);
  const lines = rowsIn(parts);
  const own = all.slice(all.length - lines.length);
  expect(own.map(({ label }) => label)).toEqual(lines.map(({ label }) => label));
  for (const [at, { name }] of lines.entries()) {
    const [is, was] = [numberAt(now, `sheet.${own[at]?.name}`), numberAt(source, `${key}.${name}`)];
    // A held value is the nearest that a number in its unit has, and equal as formulas compare: to a relative 1e-12.
    const isEqual =
      typeof is === 'number' && typeof was === 'number' && Math.abs(is - was) <= 1e-12 * Math.abs(was);
    expect([name, isEqual ? was : is]).toEqual([name, was]);
  }
  return now;
}

describe.each(['fender-energy', 'pile-bearing', 'demo', 'debris-haul', 'bollard-pull'])('%s', (id) => {
  const source = openNotebook(shipped(id));

  test('whole sheets copied into another book come to what they came to', { timeout: 240_000 }, () => {
    for (const { key } of source.book.sheets) copyAcross(source, key, placesOn(source, key), false);
  });

  test('so do lines by themselves, with what they take from others', { timeout: 240_000 }, () => {
    fc.assert(
      fc.property(fc.nat(1000), fc.nat(1000), fc.nat(8), (which, from, count) => {
        const { key = '' } = source.book.sheets[which % source.book.sheets.length] ?? {};
        const lines = placesOn(source, key).filter(({ item }) => item !== '');
        const start = lines.length === 0 ? 0 : from % lines.length;
        copyAcross(source, key, lines.slice(start, start + 1 + count), true);
      }),
      { seed: SEED, numRuns: 12 },
    );
  });
});

test('what copied lines name elsewhere is held and listed, not found under the same name in the other book', () => {
  const line = (name: string, formula: string): Row => ({
    id: `r-${name}`,
    kind: 'calc',
    name,
    formula,
    unit: 'm',
  });
  const given = (id: string, name: string, entry: string): Row => ({
    id,
    kind: 'given',
    name,
    entry,
    unit: 'm',
  });
  const book = (key: string, rows: readonly Row[]): Book => ({
    ...blankBook(),
    sheets: [{ key, title: key, parts: [{ id: 'p', kind: 'rows', rows }] }],
  });
  const source = openNotebook(book('a', [given('g', 'H', '3'), line('y', '2 * H'), line('z', '2 * gone')]));
  const [sheet] = source.book.sheets;
  const place = (row: string): CellPlace => ({ sheet: 'a', part: 'p', item: row, field: 'name' });
  const parts = sheet ? pickParts(sheet, [place('r-y'), place('r-z')], true) : [];
  const brought = takeAlong(source, 'a', parts);
  const [taken] = brought?.sheets ?? [];
  if (!brought || !taken) throw new Error('nothing can be brought');
  const into = book('a', [given('g', 'H', '7'), given('h', 'gone', '9')]);
  const copied = { book: brought, sheet: 'a', parts: taken.parts };
  const to = { sheet: 'a', place: { sheet: 'a', part: 'p', item: 'h', field: 'name' } };
  const now = openNotebook(
    after(into, done(pasteParts(into, to, copied, { over: [], areLines: true })).edit),
  );
  expect(now.book.sheets[0]?.parts.length).toBe(1);
  expect(numberAt(now, 'a.y')).toBe(6);
  expect(numberAt(now, 'a.z')).toBe('no value');
  expect(openLinks(now).map(({ toLink }) => toLink)).toEqual(['H on “a”', 'gone, which stood for nothing']);
  expect(numberAt(now, 'a.H')).toBe(7);
});
