import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  readMapped,
  readTable,
  type TableColumn,
  type TableReading,
  tableText,
} from '../../src/tables/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'V_s', kind: 'given', unit: 'm^3' },
  { name: 'rate', kind: 'given', unit: '-' },
];

/** What is said of totals that do not add up, when all totals of a text are left out. */
function apart(text: string, sums: 'out' | 'in' = 'out'): readonly string[] {
  return told(readTable(text, COLUMNS, { totals: 'out', sums, notes: 'out' }));
}

/** The same of a text whose third column has the unit of each row. */
function apartByRow(...rows: readonly string[]): readonly string[] {
  const parted = tableText(`item,V_s,unit\n${rows.join('\n')}\n`, COLUMNS);
  if (!parted.ok) throw new Error('not parted');
  const goes = new Map([
    [0, { kind: 'column', name: 'item', unit: '' }],
    [1, { kind: 'column', name: 'V_s', unit: '' }],
    [2, { kind: 'unit', of: 'V_s' }],
  ] as const);
  return told(readMapped(parted.value, COLUMNS, { headed: true, goes }, { totals: 'out' }));
}

function told(read: TableReading): readonly string[] {
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('; '));
  return read.value.problems.flatMap(({ code, message, hints }) =>
    code === 'total-apart' || code === 'total-uncompared' ? [`${message}; ${hints.join('; ')}`] : [],
  );
}

test('a total that the rows do not come to is told with the difference', () => {
  expect(apart('item,V_s\nslab,310\ncaps,215\nTotal,562\n')).toEqual([
    'line 4, left out as a total, says 562 in “V_s”; the rows above come to 525, 37 less; a row may be missing, or a number wrong',
  ]);
  expect(apart('item,V_s\nslab,310\ncaps,215\nTotal,500\n')[0]).toContain('come to 525, 25 more');
});

test('so is one that is off by the rounding of the rows, as that', () => {
  expect(apart('item,V_s\nslab,310\ncaps,215\nTotal,526\n')).toEqual([
    'line 4, left out as a total, says 526 in “V_s”; the rows above come to 525, 1 less; rounding of the rows may be all of it',
  ]);
});

test('so is one of numbers in another unit than the column', () => {
  expect(apart('item,V_s (cy)\nslab,310\ncaps,215\nTotal,562\n')[0]).toContain('come to 525, 37 less');
  expect(apart('item,V_s\nslab,310 cy\ncaps,215 cy\nTotal,562 cy\n')[0]).toContain('come to 525, 37 less');
});

test('numbers in several units are compared in one of them', () => {
  // One cubic yard is 0.764554857984 m³ (0.9144³, the international yard): 310 cy are 237.012 m³, 562 cy 429.680 m³.
  expect(apart('item,V_s\nslab,310 cy\ncaps,215 m3\nTotal,562 cy\n')).toEqual([
    'line 4, left out as a total, says 562 cy, 429.68 m³, in “V_s”; the rows above come to 452.012 m³, 22.332 m³ more; a row may be missing, or a number wrong',
  ]);
  // 380 + 20 m³ are 523.18 cy, not 400.
  expect(apart('item,V_s (cy)\nslab,380 m3\ncaps,20 m3\ntotal,400\n')).toEqual([
    expect.stringContaining('says 400 cy in “V_s (cy)”; the rows above come to 523.18 cy, 123.18 cy more'),
  ]);
  expect(apart('item,V_s (cy)\nslab,380\ncaps,20\ntotal,400 m3\n')[0]).toContain(
    'says 400 m3, 523.18 cy, in “V_s (cy)”; the rows above come to 400 cy, 123.18 cy less',
  );
  expect(apart('item,V_s (cy)\nslab,380 m3\ncaps,20 m3\ntotal,400 m3\n')).toEqual([]);
  expect(apart('item,V_s\nslab,310 cy\ncaps,215 m3\nTotal,452.01 m3\n')[0]).toContain('rounding of the rows');
});

test('a volume between those of the rows is no mean of them, and a rate may be one', () => {
  expect(apart('item,V_s (cy)\nslab,380 m3\ncaps,20 m3\ntotal,300 m3\n')[0]).toContain(
    'says 300 in “V_s (cy)”; the rows above come to 400, 100 more',
  );
  expect(apart('item,V_s\nslab,380\ncaps,20\ntotal,390\n')[0]).toContain(
    'says 390 in “V_s”; the rows above come to 400',
  );
  expect(apart('item,rate\nslab,12\ncaps,20\ntotal,16\n')).toEqual([]);
  expect(apart('item,rate\nslab,12\ncaps,20\ntotal,19\n')[0]).toContain(
    'says 19 in “rate”; the rows above come to 32',
  );
});

test('a total in a unit of another kind is not compared, and that is told', () => {
  expect(apart('item,V_s\nslab,380\ncaps,20 t\ntotal,400\n')).toEqual([
    'line 4, left out as a total, says “400” in “V_s” and is not compared with the rows above: “20 t” among them is in a unit of another kind; add the rows up by hand',
  ]);
  expect(apart('item,V_s\nslab,380\ncaps,20\ntotal,400 t\n')).toEqual([
    expect.stringContaining(
      'says “400 t” in “V_s” and is not compared with the rows above: its unit is not theirs',
    ),
  ]);
});

test('where each row says its unit, a total without one is in that of the rows if they have but one', () => {
  expect(apartByRow('slab,380,m3', 'caps,20,m3', 'total,390,')[0]).toContain(
    'the rows above come to 400, 10 more',
  );
  expect(apartByRow('slab,380,m3', 'caps,20,m3', 'total,400,')).toEqual([]);
  expect(apartByRow('slab,380,m3', 'caps,20,cy', 'total,400,')[0]).toContain(
    'is not compared with the rows above',
  );
});

test('what is carried from a page that is not there is missing', () => {
  expect(apart('item,V_s\nBrought forward,900\nslab,310\ncaps,215\nTotal,1425\n')).toEqual([
    expect.stringContaining(
      'line 2, left out as a total, says 900 in “V_s”; the rows above come to 0, 900 less',
    ),
    expect.stringContaining(
      'line 5, left out as a total, says 1425 in “V_s”; the rows above come to 525, 900 less',
    ),
  ]);
});

test.each([
  'item,V_s\nslab,310\ncaps,215\nTotal,525\n',
  'item,V_s\nslab,0.1\ncaps,0.2\nTotal,0.3\n',
  'item,V_s\nslab,310\ncaps,215\nSubtotal,525\nwall,75\nSubtotal,75\nTotal,600\n',
  // Totals of totals: of two parts of two groups each.
  'item,V_s\na,1\nb,2\nSubtotal,3\nc,4\nd,5\nSubtotal,9\nSubtotal,12\ne,7\nf,8\nSubtotal,15\ng,9\nh,10\nSubtotal,19\nSubtotal,34\nTotal,46\n',
  'item,V_s,rate\nslab,310,12\ncaps,215,20\nTotal,525,15.3\n',
  'item,V_s,rate\nslab,310,12\ncaps,215,20\nTotal,525,\n',
])('nothing is said of %j', (text) => {
  expect(apart(text)).toEqual([]);
});

test('a total is told of exactly where it is not the sum of what stands above it', () => {
  const groups = fc.array(fc.array(fc.integer({ min: 100, max: 99_999 }), { minLength: 1, maxLength: 6 }), {
    minLength: 1,
    maxLength: 5,
  });
  fc.assert(
    fc.property(
      groups,
      fc.nat(),
      fc.integer({ min: 1, max: 50 }),
      fc.boolean(),
      (parts, which, by, isWrong) => {
        const wrong = isWrong ? which % parts.length : -1;
        const rows = parts.flatMap((part, at) => {
          const sum = part.reduce((all, x) => all + x, 0) + (at === wrong ? by : 0);
          return [...part.map((x, n) => `item ${at}.${n},${x / 100}`), `Subtotal,${sum / 100}`];
        });
        // An item may be the sum of those above it by chance.
        const said = apart(`item,V_s\n${rows.join('\n')}\n`, 'in');
        expect(said.length).toBe(isWrong ? 1 : 0);
        if (isWrong) expect(said[0]).toContain(`${by / 100} less`);
      },
    ),
    { numRuns: 300 },
  );
});
