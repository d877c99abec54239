import { describe, expect, test } from 'vitest';
import { choiceOptions } from '../../../../src/app/editing/choices/choice-options.ts';
import { formulaNote } from '../../../../src/app/editor/formula/formula-note.ts';
import { formulaServiceAt } from '../../../../src/app/editor/formula/formula-service.ts';
import { applyFix } from '../../../../src/app/editor/notes/note.ts';
import { entryReader } from '../../../../src/app/editor/readers/entry-reader.ts';
import { nameReader } from '../../../../src/app/editor/readers/name-reader.ts';
import { unitReader } from '../../../../src/app/editor/readers/unit-reader.ts';
import { lineOf, sampleBook, sessionOn } from '../completion/sample-session.ts';

function formula(item: string, text: string, caret?: number, listed = true) {
  const session = sessionOn();
  const id = `pier.${item}`;
  return formulaNote(
    session.notebook.tryFormula(id, text),
    session,
    caret === undefined ? undefined : { caret, listed },
  );
}

describe('below a formula', () => {
  test('stands what it comes to in the row it is written in', () => {
    const session = sessionOn();
    const noteAt = (item: string) => {
      const service = formulaServiceAt(session, { sheet: 'pier', part: 't', item, field: 'tb' });
      return service?.note(service.tryIt('h * 3'), { caret: 5, listed: false });
    };
    expect(noteAt('r1')).toMatchObject({ text: expect.stringMatching(/^= 60\sft.*, in row 2$/) });
    expect(noteAt('head')).toMatchObject({ text: expect.stringMatching(/^= 30\sft.*, in row 1$/) });
  });

  test('stands what it comes to and what that is', () => {
    expect(formula('W', 'w * b + basis.P')).toEqual({ kind: 'result', text: '= 765\u00a0kip, a force' });
    expect(formula('W', '')).toMatchObject({ kind: 'problem' });
    expect(formula('layers.f', 'h * b * 1 psf')).toEqual({
      kind: 'result',
      text: '= 1.2\u00a0kip, a force, in row 1',
    });
    expect(formula('marks.z', 'SERIES(0 ft; b; 20 ft)')).toEqual({
      kind: 'result',
      text: 'from 0\u00a0ft to 120\u00a0ft in steps of 20\u00a0ft',
    });
  });

  test('of a check stands demand, capacity and verdict', () => {
    expect(formula('ok', 'W <= 900\u00a0kip')).toEqual({
      kind: 'result',
      text: 'demand 765\u00a0kip, capacity 900\u00a0kip: 85 % holds',
    });
    expect(formula('ok', '500 kip >= W')).toMatchObject({
      text: 'demand 765\u00a0kip, capacity 500\u00a0kip: 153 % fails',
    });
  });

  test('stands the first problem with its remedies', () => {
    const found = formula('W', 'w * b + 3/4 in');
    expect(found).toMatchObject({ kind: 'problem' });
    const [fix] = found?.fixes ?? [];
    expect(fix && applyFix('w * b + 3/4 in', fix)).toMatch(/^w \* b \+ .*3\/4/);
    expect(formula('W', 'b / (b - 120 ft) * W')).toMatchObject({
      kind: 'problem',
      text: expect.stringContaining('circle'),
    });
    expect(formula('w', 'q * b / (b - 120 ft) * 1 ft')).toMatchObject({
      kind: 'problem',
      text: expect.stringContaining('zero'),
    });
  });

  test('what is not finished at the caret is not told as a fault', () => {
    expect(formula('W', 'w * ', 4)).toMatchObject({ kind: 'remark' });
    expect(formula('W', 'bas', 3)).toMatchObject({ kind: 'remark' });
    expect(formula('W', 'bas', 3, false)).toMatchObject({ kind: 'problem' });
    expect(formula('W', 'w * b + 12 ', 11)).toMatchObject({ kind: 'remark' });
    expect(formula('W', 'bas + w * b', 11)).toMatchObject({ kind: 'problem' });
    expect(formula('W', 'MAX(w * b; ', 11)).toMatchObject({
      kind: 'remark',
      text: expect.stringMatching(/^MAX\(/),
    });
    expect(formula('W', 'w', 1)).toMatchObject({ kind: 'problem' });
  });

  test('rows that follow from one another have a kind and no value', () => {
    expect(formula('layers.bottom', 'ABOVE(bottom; 1 ft) + h')).toEqual({ kind: 'remark', text: 'a length' });
  });
});

describe('below an entry', () => {
  const read = (text: string) => entryReader(sessionOn(), lineOf('b')).note(text);

  test('stands the value where it is written otherwise', () => {
    expect(read('36.576 m')).toEqual({ kind: 'result', text: '= 120\u00a0ft' });
    expect(read(`25'-6"`)).toEqual({ kind: 'result', text: '= 25.5\u00a0ft' });
    expect(read('120')).toBeUndefined();
    expect(read('')).toBeUndefined();
  });

  test('stands what is wrong', () => {
    expect(read('12 kip')).toMatchObject({ kind: 'problem', text: expect.stringContaining('force') });
  });

  test('a cell of a table is read in the unit of its column', () => {
    const reader = entryReader(sessionOn(), { sheet: 'pier', part: 't', item: 'r0', field: 'th' });
    expect(reader.note('3.048 m')).toEqual({ kind: 'result', text: '= 10\u00a0ft' });
    expect(reader.note('clay')).toMatchObject({ kind: 'problem' });
  });
});

describe('below a number at or below 1 where per cent stands beside the field', () => {
  test.each([
    ['the unit of the line', { entry: '5 %', unit: '%' }],
    ['the unit that came with the entry', { entry: '5 %' }],
  ])('stand both readings, %s', (_, given) => {
    const rows = [{ id: 'w', kind: 'given' as const, name: 'w', ...given }];
    const sheets = [{ key: 's', title: '', parts: [{ id: 'p', kind: 'rows' as const, rows }] }];
    const session = sessionOn({ ...sampleBook, sheets });
    const { note } = entryReader(session, { sheet: 's', part: 'p', item: 'w', field: 'value' });
    const said = note('0.10');
    expect(said).toMatchObject({ kind: 'warning', text: expect.stringContaining('0.10 is read as 0.10 %') });
    expect(said?.fixes?.map((fix) => applyFix('0.10', fix))).toEqual(['0.10 %', '10 %']);
    expect(note('10')?.kind).not.toBe('warning');
    expect(note('0.10 %')).toMatchObject({ kind: 'result' });
  });
});

describe('units of a line', () => {
  const reader = (item: string) => unitReader(sessionOn(), lineOf(item, 'unit'));
  const offered = (item: string, typed?: string) =>
    reader(item)
      .suggest?.(typed)
      .map(({ text }) => text) ?? [];

  test('are those of its dimension, then those that are typed', () => {
    expect(offered('W').slice(0, 2)).toEqual(['kip', 'kN']);
    expect(offered('W')).not.toContain('ft');
    expect(offered('W', 'M')[0]).toBe('MN');
    expect(offered('W', 'MN')).toEqual([]);
    expect(offered('W', 'foot')).toContain('ft');
    expect(offered('b').slice(0, 2)).toEqual(['ft', 'm']);
  });

  test.each(['IF(W < 4 kip; W; 2 * W) <= F', 'W = F', 'W <= F'])(
    'of the check %s are those of its sides',
    (check) => {
      const book = JSON.parse(JSON.stringify(sampleBook).replace('W <= F * 100', check));
      const units = unitReader(sessionOn(book), lineOf('c', 'unit')).suggest?.(undefined) ?? [];
      expect(units.slice(0, 2).map(({ text }) => text)).toEqual(['kip', 'kN']);
    },
  );

  test('show the result in them, or refuse what is no unit', () => {
    expect(reader('W').note('kN')).toMatchObject({
      kind: 'result',
      text: expect.stringMatching(/^= 3403\u00a0kN/),
    });
    expect(reader('W').note('ft')).toMatchObject({ kind: 'problem' });
    expect(reader('W').note('tons')).toMatchObject({ kind: 'refused' });
    expect(reader('b').note('ft')).toBeUndefined();
    expect(reader('b').note('m')).toMatchObject({ text: '120 ft is 36.58\u00a0m' });
  });
});

test('a new name says what changes with it, or why it will not do', () => {
  const reader = nameReader(sessionOn(), lineOf('b', 'name'));
  expect(reader.note('b')).toBeUndefined();
  expect(reader.note('L_b')).toMatchObject({ kind: 'remark', text: expect.stringContaining('5 places') });
  expect(reader.note('q')).toMatchObject({ kind: 'refused' });
});

test('the options of a choice are its own or those of its column', () => {
  const { notebook } = sessionOn();
  expect(choiceOptions(notebook, lineOf('m'))).toEqual([
    { value: 'API', label: 'API RP 2GEO' },
    { value: 'measured' },
  ]);
  expect(choiceOptions(notebook, lineOf('s')).map(({ value }) => value)).toEqual(['clay', 'sand']);
});
