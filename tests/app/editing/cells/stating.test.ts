import { beforeEach, describe, expect, test } from 'vitest';
import { cellContent } from '../../../../src/app/editing/cells/cell-content.ts';
import { clearCells, fillDown } from '../../../../src/app/editing/cells/range-edits.ts';
import { confirmReasonsEdit, targetsAt } from '../../../../src/app/editing/cells/state-target.ts';
import { pasteIntoTable, pasteOntoLines } from '../../../../src/app/editing/clipboard/paste-cells.ts';
import { isStatedColumn, pasteStated } from '../../../../src/app/editing/clipboard/paste-stated.ts';
import { describeInsertion } from '../../../../src/app/editing/lines/describe-insertion.ts';
import { formulaServiceAt } from '../../../../src/app/editor/formula/formula-service.ts';
import { entryReader, reasonReader } from '../../../../src/app/editor/readers/entry-reader.ts';
import type { Session } from '../../../../src/app/session/session.ts';
import type { CellPlace } from '../../../../src/app/view-model/place.ts';
import {
  type Book,
  duplicateTableRow,
  type Edit,
  findRow,
  insertRow,
  insertTableRows,
} from '../../../../src/document/index.ts';
import { computedSession } from '../../computed-session.ts';
import { at, smallBook } from '../../small-book.ts';
import { done, refusal } from '../applied.ts';

let session: Session;
const M = at('p2', 'r3', 'value');
const check = at('p2', 'r4', 'value');
const twice = (row: number): CellPlace => at('p3', `r${row}`, 'k3');

beforeEach(() => {
  session = computedSession(smallBook());
});

const book = (): Book => session.notebook.book;
const line = (name: string) => {
  const [sheet] = book().sheets;
  return sheet && findRow(sheet, name)?.row;
};
const column = () =>
  book().sheets[0]?.parts.flatMap((part) => (part.kind === 'table' ? part.columns : []))[2];
/** The value of a line in kN·m. */
const moment = () => {
  const result = session.notebook.result('beam.M');
  return result.status === 'ok' && result.value.kind === 'number' ? result.value.si / 1000 : result.status;
};
const statedCells = () => {
  const found = column();
  return found?.kind === 'calc' ? found.stated : undefined;
};
const doubled = () => {
  const found = session.notebook.column('beam.spans.twice');
  return found.status === 'ok' ? [...found.reading.values] : found.status;
};

const stated = (name: string) => {
  const found = line(name);
  return found && 'stated' in found ? found.stated : undefined;
};
/** The remarks on a line that stay until its reason is confirmed. */
const remarks = (id: string) =>
  session.notebook.problems().flatMap(({ cell, code }) => (cell === id ? [code] : []));

/** Types over a cell and enters it; the sentences of a refusal, if it was one. */
function type(place: CellPlace, text: string): string {
  session.beginEdit(place, text.charAt(0));
  session.changeDraft(text);
  const said = session.endEdit('enter') ? '' : (session.hand?.remarks ?? []).join(' ');
  session.endEdit('escape');
  return said;
}

function apply(edit: Edit | undefined): void {
  if (!edit) throw new Error('there is nothing to do');
  expect(session.apply(edit).ok).toBe(true);
}

describe('a value typed over a calculated line', () => {
  test('is stated, with an open reason, and everything that names the line uses it', () => {
    expect(moment()).toBe(20);
    expect(type(M, '30')).toBe('');
    expect(line('M')).toMatchObject({ formula: 'q * L^2 / 8', stated: { entry: '30', reason: '' } });
    expect(moment()).toBe(30);
    expect(session.notebook.verdict('beam.c_M')?.holds).toBe(false);
    expect(cellContent(book(), M)).toEqual({ kind: 'entry', text: '30' });
  });

  test('is one step for undo and redo, which bring back the reason too', () => {
    type(M, '30');
    session.beginEdit(M, undefined, 'reason');
    session.changeDraft('client’s letter');
    session.endEdit('enter');
    expect(line('M')).toMatchObject({ stated: { entry: '30', reason: 'client’s letter' } });
    session.undo();
    expect(line('M')).toMatchObject({ stated: { entry: '30', reason: '' } });
    session.undo();
    expect([line('M'), moment()]).toMatchObject([{ formula: 'q * L^2 / 8' }, 20]);
    expect(line('M')).not.toHaveProperty('stated');
    session.redo();
    expect(moment()).toBe(30);
  });

  test('typed again its reason is to be confirmed; a blank, and Delete, give the computed value back', () => {
    type(M, '30');
    session.beginEdit(M, undefined, 'reason');
    session.changeDraft('table 4.2');
    session.endEdit('enter');
    type(M, '31');
    expect(stated('M')).toEqual({ entry: '31', reason: 'table 4.2', reasonFor: '30' });
    apply(clearCells(book(), [[M]]));
    expect([moment(), line('M')]).toMatchObject([20, { formula: 'q * L^2 / 8' }]);
    session.undo();
    session.beginEdit(M);
    expect(session.hand).toMatchObject({ kind: 'entry', held: '31' });
    session.changeDraft(' ');
    session.endEdit('enter');
    expect(moment()).toBe(20);
  });

  test('means the unit that is shown', () => {
    session.setUnits('US');
    type(M, '30');
    expect(line('M')).toMatchObject({ stated: { entry: '30 kip·ft' } });
    session.beginEdit(M);
    expect(session.hand?.held).toBe('30 kip·ft');
  });

  test('on a line without a unit of its own takes along the unit that is shown', () => {
    session.beginEdit(at('p2', 'r3', 'unit'));
    session.changeDraft('');
    session.endEdit('enter');
    type(M, '30');
    const { stated } = (line('M') ?? {}) as { readonly stated?: { readonly entry: string } };
    expect(stated?.entry).toMatch(/^30 \S/);
    expect(session.notebook.problems().filter(({ cell }) => cell === 'beam.M')).toMatchObject([
      { code: 'stated-without-reason' },
    ]);
  });

  test('behind an equals sign a formula is changed beside it, and it goes on standing', () => {
    type(M, '30');
    expect(type(M, '=q * L^2 / 10')).toBe('');
    expect(line('M')).toMatchObject({ formula: 'q * L^2 / 10', stated: { entry: '30' } });
    expect(type(M, 'q * L')).not.toBe('');
    session.beginEdit(M, undefined, 'formula');
    expect(session.hand).toMatchObject({ kind: 'formula', held: 'q * L^2 / 10' });
    session.changeDraft('q * L^2 / 12');
    session.endEdit('elsewhere');
    expect(line('M')).toMatchObject({ formula: 'q * L^2 / 12', stated: { entry: '30' } });
  });

  test('says below the field what it stands in place of', () => {
    const how = { kind: 'formula', typedOver: true } as const;
    const service = formulaServiceAt(session, M, how);
    const note = service?.note(service.tryIt('30'), { caret: 2, listed: false });
    expect(note?.text.replaceAll('\u00a0', ' ')).toBe(
      'states 30 kN·m in place of the computed 20 kN·m, difference +10 kN·m (+50.0 %)',
    );
    expect(note?.offer).toBe('make this line a given value');
    const opened = formulaServiceAt(session, M);
    expect(opened?.note(opened.tryIt('30'), { caret: 2, listed: false })?.text).not.toMatch(/^states/);
  });
});

describe('on a line that comes to a text', () => {
  const formula = 'if(L > 3 m, "driven", "free")';
  const state = at('p2', 'r6', 'value');

  beforeEach(() => {
    session.apply(
      insertRow({ sheet: 'beam', part: 'p2' }, 4, { id: 'r6', kind: 'calc', name: 'state', formula }),
    );
  });

  test.each([
    ['coring', 'coring'],
    ['"coring"', 'coring'],
    ['L', 'L'],
    ['12', '12'],
  ])('%s typed over it is stated', (typed, entry) => {
    expect(type(state, typed)).toBe('');
    expect(line('state')).toMatchObject({ formula, stated: { entry, reason: '' } });
    expect(type(state, `"re ${entry}"`)).toBe('');
    expect(line('state')).toMatchObject({ formula, stated: { entry: `re ${entry}` } });
  });

  test('what begins with an equals sign is its formula, and so is what is typed into the open one', () => {
    expect(type(state, '="bored"')).toBe('');
    expect(line('state')).toMatchObject({ formula: '"bored"' });
    session.beginEdit(state);
    expect(session.hand).toMatchObject({ kind: 'formula', held: '"bored"' });
    session.changeDraft('"free"');
    session.endEdit('enter');
    expect(line('state')).toMatchObject({ formula: '"free"' });
    expect(line('state')).not.toHaveProperty('stated');
  });

  test('a quotation mark that nothing closes is refused: entry-quote', () => {
    expect(type(state, '"coring')).toContain('coring');
    expect(line('state')).toMatchObject({ formula });
    expect(line('state')).not.toHaveProperty('stated');
  });

  test('says below the field what it stands in place of', () => {
    session.beginEdit(state, 'c');
    expect(session.hand).toMatchObject({ kind: 'entry', typedOver: true });
    const note = entryReader(session, state, session.hand).note('"coring"');
    expect(note?.text).toBe('states coring in place of the computed driven');
  });
});

test.each([
  ['a line of words', at('p2', 'r6', 'value'), 'coring', ''],
  ['a line of numbers', M, '30', ''],
  ['a line of numbers', M, 'q * L', 'q * L'],
])('a field opened for a value of %s takes nothing as a formula: %#', (_, place, typed, refused) => {
  const row = { id: 'r6', kind: 'calc', name: 'state', formula: '"driven"' } as const;
  session.apply(insertRow({ sheet: 'beam', part: 'p2' }, 4, row));
  const before = [line('M'), line('state')].map((one) => one && 'formula' in one && one.formula);
  session.beginEdit(place, undefined, 'entry');
  session.changeDraft(typed);
  expect(session.endEdit('enter')).toBe(refused === '');
  expect(session.hand?.remarks?.join(' ') ?? '').toContain(refused);
  expect([line('M'), line('state')].map((one) => one && 'formula' in one && one.formula)).toEqual(before);
  const stated = [line('M'), line('state')].flatMap((one) => (one && 'stated' in one ? [one.stated] : []));
  expect(stated).toEqual(refused === '' ? [{ entry: typed, reason: '' }] : []);
});

describe('the reason for a value that is typed over another', () => {
  const giveReason = (reason: string): void => {
    session.beginEdit(M, undefined, 'reason');
    session.changeDraft(reason);
    session.endEdit('enter');
  };
  beforeEach(() => {
    type(M, '12');
    giveReason('letter of 3 May');
    expect(remarks('beam.M')).toEqual([]);
    type(M, '15');
  });

  test('stays, is said to be given for the earlier one, and is an open item', () => {
    expect(stated('M')).toEqual({ entry: '15', reason: 'letter of 3 May', reasonFor: '12' });
    expect(remarks('beam.M')).toEqual(['stated-reason-carried']);
    const [remark] = session.notebook.problems();
    expect(remark).toMatchObject({
      severity: 'warning',
      message: 'the reason for the stated value was given for 12',
      hints: ['confirm it, or say where the value is from'],
    });
    type(M, '16');
    expect(stated('M')).toEqual({ entry: '16', reason: 'letter of 3 May', reasonFor: '12' });
  });

  test('holds again with the value it was given for', () => {
    type(M, '12');
    expect(stated('M')).toEqual({ entry: '12', reason: 'letter of 3 May' });
  });

  test('is confirmed by Enter in its field as it stands, and by nothing else', () => {
    session.beginEdit(M, undefined, 'reason');
    const { note } = reasonReader(session, session.hand ?? raise());
    expect(note('letter of 3 May')).toMatchObject({
      text: 'why 15 is stated for M',
      hint: 'this was given for 12: Enter confirms it, Escape leaves it to be confirmed',
    });
    expect(note('letter of 4 May')?.hint).toBeUndefined();
    session.endEdit('elsewhere');
    expect(remarks('beam.M')).toEqual(['stated-reason-carried']);
    session.beginEdit(M, undefined, 'reason');
    session.endEdit('escape');
    expect(remarks('beam.M')).toEqual(['stated-reason-carried']);
    session.beginEdit(M, undefined, 'reason');
    expect(session.endEdit('enter')).toBe(true);
    expect(stated('M')).toEqual({ entry: '15', reason: 'letter of 3 May' });
    session.undo();
    expect(stated('M')).toEqual({ entry: '15', reason: 'letter of 3 May', reasonFor: '12' });
  });

  test('gives way to another one', () => {
    giveReason('table 4.2');
    expect(stated('M')).toEqual({ entry: '15', reason: 'table 4.2' });
  });

  test('is as open for a side of a check', () => {
    type(check, 'capacity 30 kN*m');
    session.beginEdit(check, undefined, 'reason', 'capacity');
    session.changeDraft('criteria');
    session.endEdit('enter');
    type(check, 'capacity 31 kN*m');
    expect(stated('c_M')).toEqual({
      capacity: { entry: '31 kN*m', reason: 'criteria', reasonFor: '30 kN*m' },
    });
    expect(remarks('beam.c_M')).toEqual(['stated-reason-carried']);
  });
});

test('a number alone is no reason: reason-is-a-value', () => {
  type(M, '30');
  session.beginEdit(M, undefined, 'reason');
  session.changeDraft('12');
  expect(session.endEdit('enter')).toBe(false);
  expect(session.hand?.remarks?.join(' ')).toContain('“12” alone is no reason');
  const { note } = reasonReader(session, session.hand ?? raise());
  expect([note('12')?.kind, note('')?.hint]).toEqual(['problem', 'Enter leaves it open']);
  session.endEdit('escape');
  expect(session.beginEdit(at('p2', 'r1', 'value'), undefined, 'reason')).toBe(false);
});

function raise(): never {
  throw new Error('it is not there');
}

describe('a value typed over a check', () => {
  test('has to say its side, and both are offered: stated-which-side', () => {
    expect(type(check, '22 kN*m')).toContain('could be stated for the demand or for the capacity');
    const service = formulaServiceAt(session, check, { kind: 'formula', typedOver: true });
    const note = service?.note(service.tryIt('22 kN*m'), { caret: 7, listed: false });
    expect(note?.fixes?.map(({ insert }) => insert)).toEqual(['demand 22 kN*m', 'capacity 22 kN*m']);
  });

  test.each(['demand', 'capacity'] as const)('is stated for its %s, and given back', (side) => {
    expect(type(check, `${side} 22 kN*m`)).toBe('');
    expect(line('c_M')).toMatchObject({ stated: { [side]: { entry: '22 kN*m', reason: '' } } });
    expect(session.notebook.verdict('beam.c_M')?.[side]?.si).toBe(22_000);
    apply(clearCells(book(), [[check]]));
    expect(line('c_M')).not.toHaveProperty('stated');
  });

  test('both sides are given back in one step, each alone by its own', () => {
    type(check, 'demand 22 kN*m');
    type(check, 'capacity 23 kN*m');
    expect(session.beginEdit(check, undefined, 'reason')).toBe(false);
    session.beginEdit(check, undefined, 'reason', 'capacity');
    session.changeDraft('client’s criteria');
    session.endEdit('enter');
    session.beginEdit(check, undefined, 'entry', 'demand');
    expect(session.hand?.held).toBe('22 kN*m');
    session.changeDraft('24 kN*m');
    session.endEdit('elsewhere');
    expect(line('c_M')).toMatchObject({
      stated: {
        demand: { entry: '24 kN*m', reason: '' },
        capacity: { entry: '23 kN*m', reason: 'client’s criteria' },
      },
    });
    apply(clearCells(book(), [[check]]));
    expect(line('c_M')).not.toHaveProperty('stated');
    session.undo();
    expect(line('c_M')).toHaveProperty('stated.demand.entry', '24 kN*m');
  });

  test('a comparison typed over it is a formula', () => {
    type(check, 'demand 22 kN*m');
    expect(type(check, 'M <= 30 (kN*m)')).toBe('');
    expect(line('c_M')).toMatchObject({
      formula: 'M <= 30 (kN*m)',
      stated: { demand: { entry: '22 kN*m' } },
    });
  });
});

describe('a value typed into a cell of a calculated column', () => {
  test('is stated for that row, and follows it', () => {
    expect(type(twice(1), '10')).toBe('');
    expect(column()).toMatchObject({ formula: '2 * length', stated: [{ row: 2, entry: '10', reason: '' }] });
    expect(doubled()).toEqual([2, 10, Number.NaN]);
    const table = book().sheets[0]?.parts[2];
    if (table?.kind !== 'table') throw new Error('there is no table');
    apply(insertTableRows({ sheet: 'beam', table: 'p3' }, table, 0, { length: 1, cells: {} }));
    expect(cellContent(book(), twice(2))).toEqual({ kind: 'entry', text: '10' });
  });

  test('a formula there is refused, and so is what is no value: stated-cell-formula', () => {
    expect(type(twice(1), '=length')).toContain('a single cell of a calculated column takes a value');
    expect(type(twice(1), 'length * 3')).not.toBe('');
    expect(type(twice(1), '3 kN')).toContain('3 kN');
    expect(column()).not.toHaveProperty('stated');
  });

  test('F2 opens the formula of the column, or what is stated; Delete gives back', () => {
    session.beginEdit(twice(1));
    expect(session.hand).toMatchObject({ kind: 'formula', held: '2 * length' });
    session.endEdit('escape');
    type(twice(1), '10');
    session.beginEdit(twice(1));
    expect(session.hand).toMatchObject({ kind: 'entry', held: '10' });
    session.endEdit('escape');
    expect(clearCells(book(), [[twice(0)]])).toBeUndefined();
    apply(clearCells(book(), [[twice(0)], [twice(1)]]));
    expect(column()).not.toHaveProperty('stated');
    session.undo();
    expect(doubled()).toEqual([2, 10, Number.NaN]);
  });

  test('says below the field what it stands in place of', () => {
    const { note } = entryReader(session, twice(1), { kind: 'entry', typedOver: true });
    expect(note('10')?.text.replaceAll('\u00a0', ' ')).toBe(
      'states 10 m in place of the computed 4 m, difference +6 m (+150.0 %)',
    );
    expect(note('10 kN')?.kind).toBe('problem');
  });
});

describe('filling and pasting', () => {
  const state = (place: CellPlace, text: string, reason: string): void => {
    type(place, text);
    session.beginEdit(place, undefined, 'reason');
    session.changeDraft(reason);
    session.endEdit('enter');
  };

  test('down a column a stated cell is stated again, with its reason to be confirmed', () => {
    state(twice(0), '9', 'measured');
    apply(fillDown(book(), [[twice(0)], [twice(1)], [twice(2)]]));
    const filled = { entry: '9', reason: 'measured', reasonFor: 'twice in row 1' };
    expect(statedCells()).toEqual([
      { row: 1, entry: '9', reason: 'measured' },
      { row: 2, ...filled },
      { row: 3, ...filled },
    ]);
    expect(session.notebook.problems()).toMatchObject([
      { code: 'stated-cells-without-reason', data: { cells: 2, first: 2 } },
    ]);
    const [target] = targetsAt(book(), twice(0));
    apply(target?.kind === 'cell' ? confirmReasonsEdit(target) : undefined);
    expect(session.notebook.problems()).toEqual([]);
    session.undo();
    // What stands there already is filled again without a question.
    apply(fillDown(book(), [[twice(0)], [twice(1)], [twice(2)]]));
    session.undo();
    session.undo();
    expect(column()).toMatchObject({ stated: [{ row: 1 }] });
  });

  test('a formula filled over a stated line goes beside what is stated', () => {
    state(M, '30', 'letter');
    apply(fillDown(book(), [[check], [M]]));
    expect(line('M')).toMatchObject({ formula: 'M <= 25 (kN*m)', stated: { entry: '30' } });
    session.undo();
    expect(fillDown(book(), [[M], [check]])).toBeUndefined();
    const L = at('p2', 'r1', 'value');
    expect(fillDown(book(), [[L], [M]])).toBeUndefined();
    expect(line('M')).toMatchObject({ stated: { entry: '30', reason: 'letter' } });
  });

  test('a second row like one with a stated cell has its reason to be confirmed', () => {
    state(twice(1), '9', 'measured');
    const [sheet] = book().sheets;
    const table = sheet?.parts.find((part) => part.kind === 'table');
    if (table?.kind !== 'table') raise();
    apply(duplicateTableRow({ sheet: 'beam', table: 'p3' }, table, 1));
    expect(statedCells()).toEqual([
      { row: 2, entry: '9', reason: 'measured' },
      { row: 4, entry: '9', reason: 'measured', reasonFor: 'row 2' },
    ]);
  });

  test('a value pasted onto a line is stated, what was stated there keeps its reason, a formula is one', () => {
    const paste = (text: string, stated?: string) =>
      pasteOntoLines(session.notebook, [[M]], {
        cells: [[text]],
        ...(stated !== undefined && { stated: [[stated]] }),
      });
    apply(done(paste('30')));
    expect(line('M')).toMatchObject({ stated: { entry: '30', reason: '' } });
    apply(done(paste('31', 'letter')));
    const copied = { entry: '31', reason: 'letter', reasonFor: 'the cell it was copied from' };
    expect(stated('M')).toEqual(copied);
    apply(done(paste('32')));
    expect(stated('M')).toEqual({ ...copied, entry: '32' });
    session.undo();
    apply(done(paste('q * L')));
    expect(line('M')).toMatchObject({ formula: 'q * L', stated: { entry: '31', reason: 'letter' } });
    expect(refusal(paste('30 m'))).toMatchObject([expect.stringMatching(/^entry-unit-mismatch/)]);
  });

  test('a value alone carries its unit along: 3 ft onto a column in m', () => {
    const block = { cells: [['3']], units: [['ft']] };
    expect(isStatedColumn(session.notebook, twice(1), block)).toBe(true);
    apply(done(pasteStated(session.notebook, twice(1), 'written', block, { rows: 1, columns: 1 })));
    expect(column()).toMatchObject({ stated: [{ row: 2, entry: '3 ft' }] });
  });

  test('values pasted on a calculated column are told, with what was stated there before', () => {
    const block = { cells: [['3'], [''], ['5']] };
    const edit = () =>
      done(pasteStated(session.notebook, twice(0), 'written', block, { rows: 1, columns: 1 }));
    expect(describeInsertion(edit())).toMatch(/^2 cells pasted; stated in \S+, 1 left as it was/);
    apply(edit());
    expect(describeInsertion(edit())).not.toContain('before');
    block.cells[0] = ['4'];
    expect(describeInsertion(edit())).toMatch(/; stated there before: \S+ of .* 3 m \(reason open\)$/);
  });

  test('what was computed where it was copied is no value to state', () => {
    const block = { cells: [['3']], units: [['m']], calculated: [0] };
    expect(isStatedColumn(session.notebook, twice(1), block)).toBe(false);
    expect(isStatedColumn(session.notebook, twice(1), { ...block, stated: [['measured']] })).toBe(true);
  });

  test('rows copied with a stated cell bring it along, onto rows that are there and onto new ones', () => {
    const block = {
      cells: [
        ['d', '7', '15'],
        ['e', '8', '16'],
      ],
      calculated: [2],
      stated: [
        [null, null, 'measured'],
        [null, null, null],
      ],
    };
    apply(done(pasteIntoTable(session.notebook, at('p3', 'r2', 'k1'), block)));
    const reasonFor = 'the cell it was copied from';
    expect(statedCells()).toEqual([{ row: 3, entry: '15', reason: 'measured', reasonFor }]);
    apply(
      done(
        pasteIntoTable(session.notebook, at('p3', 'r3', 'k1'), {
          ...block,
          stated: block.stated.toReversed(),
        }),
      ),
    );
    expect(column()).toMatchObject({
      stated: [
        { row: 3, entry: '15' },
        { row: 5, entry: '16', reason: 'measured' },
      ],
    });
    expect(doubled()).toEqual([2, 4, 15, 14, 16]);
  });
});
