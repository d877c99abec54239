import { describe, expect, test } from 'vitest';
import type { Part } from '../../src/document/index.ts';
import { quaybook, quaybookJson } from './run-quaybook.ts';
import { bookFile, bytesFileOf, fileOf } from './small-book.ts';

const parts: readonly Part[] = [
  {
    id: 'p',
    kind: 'rows',
    rows: [{ id: 'S', kind: 'calc', name: 'S', formula: 'SUM(takeoff.V)', unit: 'cy' }],
  },
  {
    id: 't',
    kind: 'table',
    name: 'takeoff',
    length: 1,
    columns: [
      { id: 'i', kind: 'given', name: 'item', type: 'text', chunks: [['slab']] },
      {
        id: 'v',
        kind: 'given',
        name: 'V_s',
        unit: 'cy',
        range: { min: '0 cy', max: '1000 cy' },
        chunks: [[1]],
      },
      { id: 'w', kind: 'given', name: 'w', unit: '%', default: '0 %', chunks: [[null]] },
      { id: 'V', kind: 'calc', name: 'V', label: 'volume in place', formula: 'V_s * (1 + w)', unit: 'cy' },
    ],
  },
];
const book = bookFile('takeoff.quaybook.json', parts);
let files = 0;

/** The sum over a file brought in, with what is said of it, and what was complained of. */
function sumOf(text: string | Uint8Array, ...args: readonly string[]) {
  files += 1;
  const name = `takeoff-${files}.csv`;
  const path = typeof text === 'string' ? fileOf(name, text) : bytesFileOf(name, text);
  const { status, out, err } = quaybook('calc', book, '--table', `takeoff=${path}`, '--get', 'S', ...args);
  return { status, sum: out.trim().split(/\s+/).slice(1).join(' '), complaints: err.trim().split('\n') };
}

describe('a file that is refused tells what to say', () => {
  test.each<[string, string, readonly string[]]>([
    [
      'item,volume in place (cy),w\nslab,1250.5,5\n',
      '“volume in place (cy)” names the column V “volume in place”, which is calculated and takes no values; --columns "volume in place (cy)=-" leaves it out',
      ['--columns', 'volume in place (cy)=V_s'],
    ],
    [
      'Works;Menge;w\nslab;1250,5;5\n',
      '--columns "Works=NAME; Menge=NAME" says where',
      ['--columns', 'Works=item; Menge=V_s [cy]'],
    ],
    ['slab,1250.5,5\n', '--columns "#1=NAME; #2=NAME; #3=NAME"', ['--columns', '#1=item; #2=V_s; #3=w']],
    ['item\tV_s\tw\nslab\t1.250\t5\n', '--decimal point or --decimal comma', ['--decimal', 'comma']],
    ['item,V_s,w\nslab,1250.5,0.05\n', '--columns "w=w [%]" for per cent', ['--columns', 'w=w [-]']],
    ['item,V_s,w\nslab,1000.5,5\ncaps,250,5\nTotal,1250.5,5\n', '--totals out', ['--totals', 'out']],
    ['Rev. C,,\nitem,V_s,w\nslab,1250.5,5\n', '--notes out', ['--notes', 'out']],
    ['Rev. C,,\nitem,V_s,w\nslab,1250.5,5\n', '--skip LINES', ['--skip', '1']],
    [
      'item,V_s,Unit,w\nslab,1249.5,cy,5\ncaps,0.764554857984,m3,5\n',
      '--columns "Unit=NAME" says where, NAME [UNIT] with a unit, “unit of NAME” for units row by row',
      ['--columns', 'Unit=unit of V_s'],
    ],
    [
      'item,V_s,w,unit,Unit\nslab,1250.5,5,cy,ea\n',
      '--columns "#4=NAME; #5=NAME" says where',
      ['--columns', '#4=unit of V_s; #5=- no units'],
    ],
    ['item,V_s (net),w\nslab,1250.5,5\n', '“net”', ['--columns', 'V_s (net)=V_s [cy]']],
  ])('%j', (text, says, remedy) => {
    const refused = sumOf(text);
    expect(refused.status).toBe(2);
    expect(refused.sum).toBe('');
    expect(refused.complaints.join('\n')).toContain(says);
    const read = sumOf(text, ...remedy);
    // 1250.5 cy (or 1250 cy) and 5 % of it, to the four digits that are printed.
    expect([read.status, read.sum.replace(/[^\d]/g, '')]).toEqual([0, '1313']);
  });

  test('no unit that is said makes numbers of another kind right', () => {
    const { status, complaints } = sumOf(
      'item,V_s (tons),w\nslab,1250.5,5\n',
      '--columns',
      'V_s (tons)=V_s [cy]',
    );
    expect(status).toBe(2);
    expect(complaints.join('\n')).toContain('“V_s (tons)” states “tons”, a unit of another kind');
  });

  test('units left out beside numbers of another unit', () => {
    const text = 'item,V_s,Unit\nslab,12,cy\ncaps,12,m3\n';
    const { status, complaints } = sumOf(text, '--columns', 'Unit=-');
    expect([status, complaints.join('')]).toEqual([
      2,
      expect.stringMatching(/line 3, column C .*--columns "Unit=unit of V_s" .*“=- no units”/),
    ]);
    expect(sumOf(text, '--columns', 'Unit=- no units')).toMatchObject({ status: 0, sum: '24 cy' });
  });

  test('numbers without a unit among others that have another than the column', () => {
    const text = 'item;V_s;w\nslab;100 m³;0\ncaps;20 m³;0\npave;30;0\n';
    const { status, complaints } = sumOf(text);
    expect([status, complaints.join('')]).toEqual([
      2,
      expect.stringMatching(
        /: line 4, column B “V_s”: “30” has no unit.*--columns "V_s=V_s \[m³\]" or \[cy\]/,
      ),
    ]);
    // A cubic yard is 0.764554857984 m³ by the definition of the yard, 0.9144 m.
    expect(sumOf(text, '--columns', 'V_s=V_s [m³]')).toMatchObject({ status: 0, sum: '196.2 cy' });
    expect(sumOf(text, '--columns', 'V_s=V_s [cy]')).toMatchObject({ status: 0, sum: '187.0 cy' });
  });

  test('columns with values that the file lacks, unless they are to be blank', () => {
    const path = fileOf('lacking.csv', 'V_s\n12\n');
    const args = ['calc', book, '--table', `takeoff=${path}`, '--get', 'S'];
    const refused = quaybook(...args);
    expect([refused.status, refused.out]).toEqual([2, '']);
    expect(refused.err).toContain(
      '1 row there is replaced; the column item is not in the text and becomes blank; put them in the file, or --blank-missing',
    );
    expect(quaybookJson(...args).json.tables['s.takeoff']).toMatchObject({
      status: 'refused',
      problems: [{ code: 'table-columns-emptied' }],
    });
    const taken = quaybook(...args, '--blank-missing');
    expect([taken.status, taken.out.trim()]).toEqual([0, expect.stringMatching(/12 cy$/)]);
    expect(taken.err).toContain(
      '1 row there is replaced; the column item is not in the text and becomes blank',
    );
    const { json } = quaybookJson(...args, '--blank-missing');
    expect(json.tables['s.takeoff']).toMatchObject({
      rows_replaced: 1,
      problems: [
        { code: 'table-columns-blank', data: { rows: 1, columns: ['item'] } },
        { code: 'units-assumed', data: { columns: ['V_s in cy'] } },
      ],
    });
  });

  test('two cells that may be one number, unless it is said that they are two', () => {
    const text = 'item,V_s,w\nslab,1,250\ncaps,2,310\nkerb,3,120\n';
    const { status, complaints } = sumOf(text);
    expect([status, complaints.length]).toEqual([2, 3]);
    expect(complaints[0]).toMatch(/line 2, column B: 1 and 250 .* --thousands plain/);
    // 1 × 3.5 + 2 × 4.1 + 3 × 2.2
    expect(sumOf(text, '--thousands', 'plain')).toMatchObject({ status: 0, sum: '18.3 cy' });
  });

  test('no rows at all, unless that is meant', () => {
    expect(sumOf('item,V_s\n')).toMatchObject({
      status: 2,
      complaints: [expect.stringMatching(/no rows .*--empty/)],
    });
    expect(sumOf('item,V_s\n', '--empty')).toMatchObject({ status: 0, sum: '0 cy' });
  });

  test('all bad cells at once, by line and column', () => {
    const { status, complaints } = sumOf('item,V_s,w\nslab,lots,5\n\ncaps,12,x\nwall,3 kN,\n');
    expect(status).toBe(2);
    expect(complaints).toHaveLength(4);
    expect(complaints[0]).toMatch(/line 2, column B “V_s”: “lots” is not a number/);
    expect(complaints[1]).toMatch(/line 4, column C “w”: “x” is not a number/);
    expect(complaints[2]).toMatch(/line 5, column B “V_s”: “3 kN” is a force/);
    expect(complaints[3]).toMatch(/line 3/);
  });

  test('what is only remarkable behind what is wrong, in one run', () => {
    const { status, complaints } = sumOf('item,V_s,w\nslab,5--,5\ncaps,-12,5\nwall,−3,5\n');
    expect(status).toBe(2);
    expect(complaints.map((said) => /line \d/.exec(said)?.[0])).toEqual(['line 2', 'line 3', 'line 4']);
    expect(complaints[0]).toMatch(/“5--” does not read/);
  });

  test.each(['Vol. m3', 'Menge in m³', 'V_s_m3', 'Vol/m3', 'Menge {m3}'])(
    'the unit of a header “%s” is kept where only its column is said',
    (header) => {
      const { status, sum } = sumOf(
        `item,${header},w\nslab,0.764554857984,0\n`,
        '--columns',
        `${header}=V_s`,
      );
      expect([status, sum]).toEqual([0, '1 cy']);
    },
  );

  test('a header of another kind is refused where only its column is said', () => {
    const { status, complaints } = sumOf('item,Menge m,w\nslab,1,0\n', '--columns', '#2=V_s');
    expect([status, complaints.join('')]).toEqual([2, expect.stringMatching(/“m” of “Menge m”.* \[UNIT\]/)]);
  });

  test('a unit that is said against the header is told with both', () => {
    const { status, sum, complaints } = sumOf(
      'item,Menge (m3),w\nslab,1,0\n',
      '--columns',
      'Menge (m3)=V_s [cy]',
    );
    expect([status, sum]).toEqual([0, '1 cy']);
    expect(complaints.join('')).toMatch(/“Menge \(m3\)” states “m\^?3”, and its numbers are read in “cy”/);
  });
});

test.each([
  ['UTF-8 with a mark', Buffer.from('\ufeffitem,V_s (m³)\nslab,1\n', 'utf8')],
  ['UTF-16 with a mark', Buffer.from('\ufeffitem,V_s (m³)\nslab,1\n', 'utf16le')],
  ['UTF-16 without one', Buffer.from('item,V_s (m³)\nslab,1\n', 'utf16le')],
  ['UTF-16 the other way round', Buffer.from('item,V_s (m³)\nslab,1\n', 'utf16le').swap16()],
  ['Windows-1252, which is told', Buffer.from('item,V_s (m³)\nslab,1\n', 'latin1')],
])('reads %s', (what, bytes) => {
  const { status, sum, complaints } = sumOf(bytes);
  expect([status, sum.slice(0, 5)]).toEqual([0, '1.308']);
  expect(complaints.join('')).toMatch(what.startsWith('Windows') ? /read as Windows-1252: line 1 has/ : /^$/);
});

test('that an encoding is guessed stands in the account', () => {
  const path = bytesFileOf('western.csv', Buffer.from('item,V_s\nPf\u00e4hle,1\n', 'latin1'));
  const { json } = quaybookJson('calc', book, '--table', `takeoff=${path}`);
  expect(json.tables['s.takeoff'].problems[0]).toMatchObject({
    code: 'table-encoding-guessed',
    data: { line: 2, text: 'Pfähle,1' },
  });
});

test('a file in Windows-1252 keeps its dashes and quotation marks', () => {
  const bytes = Buffer.from('item,V_s\n\x93slab\x94\x962,1\ncaps,\x97\n', 'latin1');
  const path = bytesFileOf('dashes.csv', bytes);
  const { json } = quaybookJson('calc', book, '--table', `takeoff=${path}`);
  const { problems } = json.tables['s.takeoff'];
  expect(problems.map(({ code }: { readonly code: string }) => code)).toEqual([
    'table-encoding-guessed',
    'cells-nil',
  ]);
  expect(problems[0].data).toEqual({ line: 2, text: '“slab”–2,1' });
});

test('what is left out and what is remarkable is told beside the result', () => {
  const { status, complaints } = sumOf('item,V_s,Remark\nslab,3000,wet\n,,\ncaps,4,\n', '--columns', '*=-');
  expect(status).toBe(0);
  expect(complaints.map((line) => line.replace(/^\S+: /, ''))).toEqual([
    '“Remark” of the text stays out',
    'a blank row is left out (line 3)',
    'line 2, column B “V_s”: 3000 cy is above the permitted range: at most 1000 cy',
    'without a unit in the text, numbers are read as the table has them: V_s in cy',
  ]);
});

test('where the text or a person says the unit, nothing is said of the one of the table', () => {
  expect(sumOf('item,V_s (cy)\nslab,3\n', '--blank-missing').complaints.join()).not.toContain(
    'without a unit',
  );
  const said = sumOf('item,V_s\nslab,3\n', '--blank-missing', '--columns', 'V_s=V_s [cy]');
  expect(said.complaints.join()).not.toContain('without a unit');
});

test('lines to skip that the file does not have are refused', () => {
  const { status, complaints } = sumOf('item,V_s\nslab,3\n', '--skip', '2,9');
  expect([status, complaints.join()]).toEqual([2, expect.stringMatching(/--skip 9: the file has 2 lines$/)]);
});

test('a note that says thousands, or another currency, is not left out with the others', () => {
  for (const note of ['Volumes in thousand m3', 'All figures in thousands', 'Volumes in m3 x 1000']) {
    const text = `Pier 4,\n${note},\nitem,V_s (cy)\nslab,1250.5\n`;
    const { status, complaints } = sumOf(text, '--notes', 'out', '--blank-missing');
    expect([status, complaints.join()]).toEqual([
      2,
      expect.stringMatching(/line 2 is left out as a note.*--skip 2/),
    ]);
    expect(sumOf(text, '--notes', 'out', '--skip', '2', '--blank-missing').status).toBe(0);
  }
});

test('a note on a scale, a grade or another strength is left out with the others', () => {
  const text = 'Scale 1/1000 (E2) 1000 psi grout,\nitem,V_s (cy)\nslab,1250.5\n';
  expect(sumOf(text, '--notes', 'out', '--blank-missing').status).toBe(0);
});

test('a note that says another currency than the prices is not left out with the others', () => {
  const csv = fileOf('prices.csv', 'Alle Preise in €,,,\nline,quantity,per,price\nMob,1,ls,12.5\n');
  const { status, err } = quaybook(
    'calc',
    'debris-haul',
    '--table',
    `extra=${csv}`,
    '--blank-missing',
    '--notes',
    'out',
  );
  expect([status, err]).toEqual([2, expect.stringContaining('says “€”')]);
});

test('a blank heading among others is told by its number', () => {
  const { status, sum } = sumOf('item,,w\nslab,1250.5,5\n', '--columns', '#2=V_s [cy]');
  expect([status, sum.replace(/[^\d]/g, '')]).toEqual([0, '1313']);
});

test('a value of the sign that the range leaves out is refused with its place', () => {
  const { status, complaints } = sumOf('item,V_s\nslab,-3\n');
  expect(status).toBe(2);
  expect(complaints.join()).toContain(
    'line 2, column B “V_s”: -3 cy is negative, and the permitted range begins at 0 cy',
  );
});

test('--json accounts for every cell, also of a file that is refused', () => {
  const csv = fileOf('account.csv', 'item,V_s (m3),Remark\nslab,1,wet\nTotal,1,\n');
  const args = ['calc', book, '--table', `takeoff=${csv}`, '--columns', 'Remark=-'];
  const taken = quaybookJson(...args, '--totals', 'out').json.tables['s.takeoff'];
  expect(taken).toMatchObject({
    status: 'taken',
    encoding: 'utf-8',
    rows: 1,
    cells: 9,
    cells_by_fate: { blank: 1, held: 0, heading: 2, taken: 2, marked: 0, out: 4, refused: 0 },
    columns: [
      { letter: 'A', header: 'item', column: 'item', unit: '' },
      { letter: 'B', header: 'V_s (m3)', column: 'V_s', unit: 'm^3' },
      { letter: 'C', header: 'Remark', column: null, unit: '' },
    ],
  });
  const { run, json } = quaybookJson(...args);
  expect(run.status).toBe(2);
  expect(json).toMatchObject({ results: {}, tables: { 's.takeoff': { status: 'refused' } } });
  expect(json.tables['s.takeoff'].cells_by_fate).toMatchObject({ taken: 0, held: 2, refused: 2 });
});

test('--json of a file refused for its cells says that nothing of it is in the book', () => {
  const csv = fileOf('held.csv', 'item,V_s (m3)\nslab,1\ncaps,wet\n');
  const { json } = quaybookJson('calc', book, '--table', `takeoff=${csv}`);
  expect(json.tables['s.takeoff']).toMatchObject({
    status: 'refused',
    rows: 2,
    rows_taken: 0,
    rows_replaced: 0,
    cells: 6,
    cells_by_fate: { blank: 0, held: 3, heading: 2, taken: 0, marked: 0, out: 0, refused: 1 },
  });
});

test.each<[string, Uint8Array | string, string]>([
  ['an empty file', '', 'table-empty'],
  ['an archive', new Uint8Array([0x50, 0x4b, 3, 4, 0x14, 0, 6, 0, 8, 0, 0, 1, 0x81]), 'table-other-format'],
  ['a PDF', '%PDF-1.7\n%\u00e2\u00e3\n1 0 obj\n', 'table-other-format'],
  ['a page', '<html><body><table><tr><td>item</td><td>V_s</td></tr></table>', 'table-other-format'],
  ['odd bytes', new Uint8Array([1, 0, 0, 0, 0x81]), 'table-not-text'],
  ['an open quotation mark', 'item,V_s\n"slab,1\n', 'table-quote-open'],
])('--json of %s says why it is refused', (_, content, code) => {
  const csv = bytesFileOf(
    'unread.csv',
    typeof content === 'string' ? new TextEncoder().encode(content) : content,
  );
  const { run, json } = quaybookJson('calc', book, '--table', `takeoff=${csv}`);
  expect(run.status).toBe(2);
  expect(run.err.trim()).toBe(json.refused);
  expect(json).toMatchObject({ results: {}, problems: [] });
  expect(json.tables['s.takeoff']).toMatchObject({ status: 'refused', rows: 0, cells: 0 });
  expect(json.tables['s.takeoff'].problems).toEqual([expect.objectContaining({ code })]);
});

test.each([
  ['--columns', 'Vol=V_s'],
  ['--skip', '9'],
  ['--decimal', 'dot'],
  ['--get', 'nope'],
  ['--nope', 'x'],
])('--json says why %s %s is refused', (...args) => {
  const csv = fileOf('plain.csv', 'item,V_s\nslab,1\n');
  const { run, json } = quaybookJson('calc', book, '--table', `takeoff=${csv}`, ...args);
  expect(run.status).toBe(2);
  expect(run.err.trim()).toBe(json.refused);
});

test.each([
  ['Menge (m³)', 'Menge=V_s [m3]'],
  ['Menge (m³)', 'Menge=V_s'],
  ['MENGE [m3]', 'menge=V_s'],
  ['Menge, m³', 'Menge=V_s'],
])('a column under “%s” is told by --columns "%s"', (header, columns) => {
  const { status, sum } = sumOf(`item;${header}\nslab;1\n`, '--columns', columns);
  expect([status, sum]).toEqual([0, sumOf('item;V_s (m3)\nslab;1\n').sum]);
});

test('a header told without its unit has to be the only one', () => {
  const text = 'item;Menge (m³);Menge (t)\nslab;1;2\n';
  const { status, complaints } = sumOf(text, '--columns', 'Menge=V_s; *=-');
  expect(status).toBe(2);
  expect(complaints.join()).toContain('two columns of the file are called “Menge”');
  const whole = sumOf(text, '--columns', 'Menge (m³)=V_s; Menge (t)=-');
  expect(whole.status).toBe(0);
});

test.each([
  [['--columns', 'Vol=V_s'], 'the file has no column “Vol”'],
  [['--columns', 'V_s'], '“V_s” is none'],
  [['--columns', 'item=nope'], 'no column “nope”'],
  [['--columns', '*=V_s'], '“*=-” leaves the others out'],
  [['--decimal', 'dot'], '--decimal takes point or comma'],
  [['--totals', 'maybe'], '--totals takes out or in'],
  [['--skip', 'x'], '--skip takes lines'],
])('%j is refused in a sentence', (args, says) => {
  const { status, complaints } = sumOf('item,V_s\nslab,1\n', ...args);
  expect(status).toBe(2);
  expect(complaints).toEqual([expect.stringContaining(says)]);
});

test('a column that is asked for prints its values', () => {
  const { out } = quaybook('calc', book, '--get', 'takeoff.V');
  expect(out.trim().split('\n').at(-1)?.trim()).toBe('1  1 cy');
});

test('--version prints the version of the package', () => {
  expect(quaybook('--version').out).toMatch(/^quaybook \d+\.\d+\.\d+\n$/);
});

describe('eval over columns', () => {
  test('as the examples of the language are written', () => {
    const { out } = quaybook(
      'eval',
      'RUNNINGSUM(t)',
      '--given',
      'layers.t=[4 m, 5 m, 6 m]',
      '--in',
      'layers',
    );
    expect(out).toBe('4 m\n9 m\n15 m\n');
    const { json } = quaybookJson('eval', 'SUM(a.n)', '--given', 'a.n=[1 m; 2 m]', '--unit', 'cm');
    expect(json).toMatchObject({ value: 300, unit: 'cm', problems: [] });
  });

  test.each([
    [['--given', 'a.n=1 m'], 'takes its entries in brackets'],
    [['--given', 'a.n=[1 m]', '--given', 'a.k=[1, 2]'], 'has 2 entries, and the columns of a before it 1'],
  ])('%j is refused in a sentence', (args, says) => {
    const run = quaybook('eval', 'SUM(a.n)', ...args);
    expect(run.status).toBe(2);
    expect(run.err).toContain(says);
  });
});
