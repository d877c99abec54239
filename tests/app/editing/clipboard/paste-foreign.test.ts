import { expect, test } from 'vitest';
import { pasteForeign } from '../../../../src/app/editing/clipboard/paste-foreign.ts';
import { describeInsertion } from '../../../../src/app/editing/lines/describe-insertion.ts';
import type { CellPlace } from '../../../../src/app/view-model/place.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';
import { at, smallBook } from '../../small-book.ts';
import { after, done, refusal } from '../applied.ts';

const notebook = openNotebook(smallBook());
const value = (item: string) => at('p2', item, 'value');
const paste = (selected: readonly (readonly CellPlace[])[], text: string) =>
  pasteForeign(notebook, 'beam', selected, 'written', text);

/** The lines of a block after a text was pasted. */
function lines(selected: readonly (readonly CellPlace[])[], text: string, part = 'p2') {
  const found = after(smallBook(), done(paste(selected, text)).edit).sheets[0]?.parts.find(
    ({ id }) => id === part,
  );
  return found?.kind === 'rows'
    ? found.rows.map((row) => [
        row.name,
        row.label,
        'entry' in row ? row.entry : row.formula,
        'unit' in row ? row.unit : undefined,
      ])
    : [];
}

test('descriptions and values become new lines below, and nothing there is touched', () => {
  const text = 'Description\tValue\npile spacing\t12 ft\nno. of bents\t31\ndeck load\t1.5 kip/ft';
  const now = lines([[value('r1')]], text);
  expect(now).toEqual([
    ['L', 'the L', '4 m', 'm'],
    ['x_1', 'pile spacing', '12 ft', 'ft'],
    ['x_2', 'no. of bents', '31', ''],
    ['x_3', 'deck load', '1.5 kip/ft', 'kip/ft'],
    ['q', 'the q', '10 kN/m', 'kN/m'],
    ['M', 'moment', 'q * L^2 / 8', 'kN·m'],
    ['c_M', undefined, 'M <= 25 (kN*m)', undefined],
  ]);
  expect(describeInsertion(done(paste([[value('r1')]], text)).edit)).toBe(
    '3 lines pasted; 8 cells: 2 headings, 6 taken',
  );
});

test('units may stand in a column of their own', () => {
  expect(lines([[at('p4', 'r5', 'value')]], 'fetch\t12\tkm', 'p4').at(-1)).toEqual([
    'x_1',
    'fetch',
    '12 km',
    'km',
  ]);
});

test('digits in the place of a unit are another number: the text is refused whole', () => {
  for (const text of [
    'slab\t12\t100',
    'Item\tArea (m²)\tThk (mm)\nslab\t12\t100\nTotal\t12\t',
    'slab\t1\t000',
  ])
    expect(refusal(paste([[value('r1')]], text))[0]).toMatch(/^paste-no-place/);
});

test('the unit that stands in the heading of the values is theirs', () => {
  const read = (text: string) => lines([[at('p4', 'r5', 'value')]], text, 'p4').slice(-1);
  expect(read('Item\tThk (mm)\nslab\t100')).toEqual([['x_1', 'slab', '100 mm', 'mm']]);
  expect(read('Item\tThickness [in]\nslab\t5.5')).toEqual([['x_1', 'slab', '5.5 in', 'in']]);
  expect(read('Item\tValue\nslab\t5.5')).toEqual([['x_1', 'slab', '5.5', '']]);
  expect(read('Item\tThk (mm)\nslab\t4 in')).toEqual([['x_1', 'slab', '4 in', 'in']]);
});

test('a unit in the heading and one beside the value are two readings: refused', () => {
  expect(refusal(paste([[value('r1')]], 'Item\tThk (mm)\tUnit\nslab\t100\tin'))[0]).toMatch(
    /^paste-no-place/,
  );
});

test('as many cells as are selected are replaced', () => {
  expect(
    lines([[value('r1')], [value('r2')]], '5 m\n12')
      .map(([, , entry]) => entry)
      .slice(0, 2),
  ).toEqual(['5 m', '12']);
  expect(
    lines([[value('r1')], [value('r2')]], '5')
      .map(([, , entry]) => entry)
      .slice(0, 2),
  ).toEqual(['5', '5']);
});

test.each([
  ['5 m\n12\n13', 'several numbers, and one cell'],
  ['a\tb\tc\td\n1\t2\t3\t4', 'more columns than a line has'],
  ['depth\tdeep\nwidth\twide', 'words in place of values'],
])('%j is refused whole: %s', (text) => {
  expect(refusal(paste([[value('r1')]], text))[0]).toContain('find no place on these lines');
});

test('where no cell is chosen it is said what to do', () => {
  expect(refusal(paste([], '1\t2\t3\n4\t5\t6'))).toEqual([
    'paste-on-nothing: 2 rows of 3 cells beginning with “1” find no place: no cell is chosen',
  ]);
});

test('a number that can be read two ways is refused with both', () => {
  expect(refusal(paste([[value('r1')]], '1,250'))).toEqual([
    'paste-number-unclear: “1,250” can be 1.250 or 1250',
  ]);
  expect(refusal(paste([[value('r1')]], 'length\t12,385 ft'))).toEqual([
    'paste-number-unclear: “12,385 ft” can be 12.385 or 12385',
  ]);
});

test('a number is stated in place of a formula, words are refused, a formula takes its place', () => {
  const now = after(smallBook(), done(paste([[value('r3')]], '12')).edit);
  const rows = now.sheets[0]?.parts.flatMap((part) => (part.kind === 'rows' ? part.rows : []));
  expect(rows?.find(({ name }) => name === 'M')).toMatchObject({
    formula: 'q * L^2 / 8',
    stated: { entry: '12', reason: '' },
  });
  expect(refusal(paste([[value('r3')]], 'soft clay'))).toEqual([
    'set-calculated: “M” is calculated and cannot be set',
  ]);
  expect(refusal(paste([[value('r4')]], '12 kN*m'))).toEqual([
    'stated-which-side: “12 kN*m” could be stated for the demand or for the capacity of this check',
  ]);
  expect(lines([[value('r3')]], '=q*L')[2]?.[2]).toBe('q*L');
});

test('words take a whole text', () => {
  const now = after(smallBook(), done(paste([[at('p1', '', 'text')]], 'two\nlines\tof it')).edit);
  expect(now.sheets[0]?.parts[0]).toMatchObject({ text: 'two\nlines\tof it' });
});
