import { describe, expect, test } from 'vitest';
import { delimiterWords } from '../../src/app/dialogs/rows/rows-choices.ts';
import { rowsQuestions, type Said, withAnswer } from '../../src/app/dialogs/rows/rows-questions.ts';
import { directedMapping } from '../../src/cli/columns-option.ts';
import { readOptions } from '../../src/cli/options.ts';
import { tableKinds, tableOptions } from '../../src/cli/table-options.ts';
import { withRemedy } from '../../src/cli/table-remedies.ts';
import { catalogueAreas, type Problem } from '../../src/diagnostics/index.ts';
import {
  type Destination,
  namedMapping,
  type ReadOptions,
  readMapped,
  type TableColumn,
  tableText,
} from '../../src/tables/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'area', kind: 'given', unit: 'sf' },
  { name: 'V_s', kind: 'given', unit: 'cy' },
  { name: 'w', kind: 'given', unit: '%' },
  { name: 'V', kind: 'calc', unit: 'cy' },
];

type Goes = readonly (readonly [position: number, to: Destination])[];

/** A question about a text, and how it is answered in the dialog and on the command line. */
interface Answered {
  /** A text that raises it, and what has to be said of its columns before it does. */
  readonly text: string;
  readonly goes?: Goes;
  /** What was said of the text before, and which lines were said to be left out. */
  readonly said?: Said;
  readonly skipped?: readonly number[];
  /** In the dialog: by a choice for the whole text, by choices for its columns, or by mending it where it stands. */
  readonly dialog: 'choice' | 'mended' | 'parting' | Goes;
  /** On the command line: by options, or by mending the file. */
  readonly options: readonly string[] | 'mended';
  readonly mended?: string;
}

const inUnit = (name: string, unit: string): Destination => ({ kind: 'column', name, unit });
const OUT: Destination = { kind: 'out' };
const UNITS: Destination = { kind: 'unit', of: 'V_s' };

const byMending = (text: string, mended: string, goes: Goes = []): Answered => ({
  text,
  goes,
  dialog: 'mended',
  options: 'mended',
  mended,
});

const byChoice = (text: string, ...options: readonly string[]): Answered => ({
  text,
  dialog: 'choice',
  options,
});

const ANSWERS: Readonly<Record<string, Answered>> = {
  'table-parting-unclear': { text: '12,5\n7,5\n', dialog: 'parting', options: ['--parting', 'none'] },
  'table-empty': byMending(' \n', 'item\nslab\n'),
  'table-not-text': byMending('a\0b', 'item\nslab\n'),
  'table-other-format': byMending('%PDF-1.7\n1 0 obj\n', 'item\nslab\n'),
  'table-too-many-rows': byMending(`item\n${'slab\n'.repeat(201)}`, 'item\nslab\n'),
  'table-quote-open': byMending('item\n"a\n', 'item\n"a"\n'),
  'table-quote-stray': byMending('item\n"a"b\n', 'item\n"a"\n'),
  'table-nothing-taken': {
    text: 'Pos\n1\n',
    goes: [[0, OUT]],
    dialog: [[0, inUnit('item', '')]],
    options: ['--columns', 'Pos=item'],
  },
  'table-no-rows': byChoice('item,V_s\n', '--empty'),
  'rows-above-headers': byChoice('Rev. C\nitem,V_s\na,1\n', '--notes', 'out'),
  'row-total': byChoice('item,V_s\na,1\nTotal,1\n', '--totals', 'out'),
  'row-sum': byChoice('item,V_s\na,60\nb,40\nwall,100\n', '--sums', 'in'),
  'row-all': byChoice('item,V_s\na,60\nb,40\nAll deck,105\n', '--totals', 'in'),
  'row-note': byChoice('item,V_s,w\na,1,5\nas built,,\n', '--notes', 'in'),
  'row-numbering': byChoice('item,V_s,w\n1,2,3\na,1,5\n', '--notes', 'out'),
  'row-unnamed': byChoice('item,V_s\na,1\n,7\n', '--unnamed', 'out'),
  'row-short': byChoice('item,V_s\na\n', '--short', 'blank'),
  'row-long': byMending('item,V_s\na,1,2\n', 'item,V_s\na,"1,2"\n'),
  'cells-split': byChoice('item,V_s,w\na,1,250\n', '--thousands', 'plain'),
  'cells-split-more': byChoice(`item,V_s,w\n${'a,1,250\n'.repeat(101)}`, '--thousands', 'plain'),
  'row-ends-blank': byChoice('item,V_s,w\na,12,45,\n', '--thousands', 'plain'),
  'cells-nil': byChoice('item,V_s\na,-\n', '--nil', 'zero'),
  'cells-parentheses': byChoice('item,V_s\na,(5)\n', '--parentheses', 'minus'),
  'decimal-ambiguous': byChoice('item;V_s\na;1,250\n', '--decimal', 'comma'),
  'decimal-mixed': byMending('item;V_s\na;1,5\nb;1.5\n', 'item;V_s\na;1,5\nb;1,5\n'),
  'decimal-contradicted': byMending('item;V_s\na;1,5\n', 'item;V_s\na;1.5\n'),
  'cell-unread': byMending('item,V_s\na,about 5\n', 'item,V_s\na,5\n'),
  'cells-unread-more': byMending(`item,V_s\n${'a,about 5\n'.repeat(101)}`, 'item,V_s\na,5\n'),
  'column-undecided': {
    text: 'item,Menge\na,1\n',
    dialog: [[1, inUnit('V_s', '')]],
    options: ['--columns', 'Menge=V_s'],
  },
  'column-twice': { text: 'item,V_s,v_s\na,1,2\n', dialog: [[2, OUT]], options: ['--columns', '#3=-'] },
  'column-unit-misplaced': {
    text: 'item (m),V_s\na,1\n',
    dialog: [[0, inUnit('item', '')]],
    options: 'mended',
    mended: 'item,V_s\na,1\n',
  },
  'column-unit-unread': {
    text: 'item,V_s (net)\na,1\n',
    dialog: [[1, inUnit('V_s', 'm3')]],
    options: ['--columns', 'V_s (net)=V_s [m3]'],
  },
  'column-unit-other-kind': byMending('item,V_s (kN)\na,1\n', 'item,V_s\na,1\n'),
  'column-multiple': byMending('item,V_s (1000 m³)\na,1\n', 'item,V_s (m³)\na,1000\n'),
  'column-unit-alone': {
    text: 'item,Menge,Einheit,w\na,1,m3,5\n',
    goes: [
      [1, OUT],
      [2, UNITS],
    ],
    dialog: [[1, inUnit('V_s', '')]],
    options: ['--columns', 'Menge=V_s; Einheit=unit of V_s'],
  },
  'column-units-ignored': {
    text: 'item,V_s,Unit\na,1,m3\n',
    goes: [[2, OUT]],
    dialog: [[2, UNITS]],
    options: ['--columns', 'Unit=unit of V_s'],
  },
  'unit-left-out': {
    text: 'All in m³\nitem,V_s\na,1\n',
    said: { notes: 'out' },
    dialog: [[1, inUnit('V_s', 'm3')]],
    options: ['--notes', 'out', '--columns', 'V_s=V_s [m³]'],
  },
  'multiple-left-out': {
    text: 'All in thousands\nitem,V_s (m3)\na,1\n',
    said: { notes: 'out' },
    dialog: 'mended',
    options: 'mended',
    mended: 'item,V_s (m3)\na,1000\n',
  },
  'cells-unit-missing': {
    text: 'item,V_s\na,1 m3\nb,2\n',
    dialog: [[1, inUnit('V_s', 'cy')]],
    options: ['--columns', 'V_s=V_s [cy]'],
  },
  'unit-left-out-among': {
    text: 'item,V_s (m3)\na,1\nitem,V_s (cy)\nb,2\n',
    skipped: [3],
    dialog: 'mended',
    options: 'mended',
    mended: 'item,V_s (m3)\na,1\nb,2 cy\n',
  },
  'headings-change': byMending(
    'item,V_s (m3)\na,1\nitem,V_s (cy)\nb,2\n',
    'item,V_s (m3)\na,1\nb,2 cy\n',
    [],
  ),
  'row-unit-unread': byMending('item,V_s,Unit\na,1,lots\n', 'item,V_s,Unit\na,1,m3\n', [[2, UNITS]]),
  'row-unit-contradicted': byMending('item,V_s,Unit\na,1 cy,m3\n', 'item,V_s,Unit\na,1,m3\n', [[2, UNITS]]),
  'column-calculated': { text: 'item,V\na,1\n', dialog: [[1, OUT]], options: ['--columns', 'V=-'] },
  'column-share': {
    text: 'item,w\na,0.05\n',
    dialog: [[1, inUnit('w', '-')]],
    options: ['--columns', 'w=w [-]'],
  },
};

/** Questions that need what is not in a text, each with why it is not here. */
const ELSEWHERE: Readonly<Record<string, string>> = {
  'table-columns-emptied':
    'is about the rows that are there: told above the button, and answered by --blank-missing',
  'row-short-spaced': 'is of a text whose cells were said to be parted by spaces: mended where it stands',
  'rows-blank-between':
    'is about numbers that go over rows of the page, a choice of the dialog alone: row-kinds.test.ts has it',
  'paste-calculated': 'is about a place on the page where cells without headers are put',
  'table-header-missing': 'is of a reading without a mapping, and both doors have one',
  'column-unknown': 'is of a reading without a mapping, and both doors have one',
  'column-without-header': 'is of a reading without a mapping, and both doors have one',
};

const check: NonNullable<ReadOptions['check']> = (_, cell) =>
  `${cell}`.startsWith('about')
    ? {
        code: 'cell-not-number',
        severity: 'error',
        from: 0,
        to: 0,
        message: `${cell} is no number`,
        hints: ['write a number'],
        fixes: [],
        data: {},
      }
    : undefined;

/** What is said of a text where its columns go as their headers and then as these choices say. */
function problemsOf(
  code: string,
  text: string,
  goes: Goes,
  said: Said = {},
  skipped: readonly number[] = [],
): readonly Problem[] {
  const parted = tableText(text, COLUMNS, { skipped: new Set(skipped) });
  if (!parted.ok) return parted.problems;
  const named = namedMapping(parted.value, COLUMNS);
  const read = readMapped(
    parted.value,
    COLUMNS,
    { headed: true, goes: new Map([...named.goes, ...goes]) },
    { ...said, ...(code === 'decimal-contradicted' && { decimal: 'point' }), check, rowLimit: 200 },
  );
  return read.ok ? read.value.problems : read.problems;
}

const codesOf = (found: readonly Problem[]): readonly string[] => found.map(({ code }) => code);

test('every question about a text is here', () => {
  const asked = Object.entries(catalogueAreas.tables).flatMap(([code, one]) =>
    'severity' in one && one.severity === 'warning' ? [] : [code],
  );
  expect([...Object.keys(ANSWERS), ...Object.keys(ELSEWHERE)].sort()).toEqual(asked.sort());
});

test('every choice of the dialog answers a question that there is', () => {
  const raised = rowsQuestions.flatMap(({ codes }) => codes);
  const isKnown = (code: string): boolean => ANSWERS[code]?.dialog === 'choice' || code in ELSEWHERE;
  expect(raised.filter((code) => !isKnown(code))).toEqual([]);
});

/** What `--columns` and other options a remedy proposes, with names in place of those it leaves open. */
function proposalsIn(hints: string): readonly (readonly string[])[] {
  const said =
    /--columns "([^"]+)"|--([a-z]+) (point|comma|out|in|blank|zero|minus|plain|none|spaces|no|yes)\b|--(empty)\b/g;
  return [...hints.matchAll(said)].map(([, directions, option = '', word = '', alone]) => {
    if (alone !== undefined) return [`--${alone}`];
    if (directions === undefined) return [`--${option}`, word];
    return [
      '--columns',
      directions.replaceAll('=NAME [UNIT]', '=-').replaceAll('=NAME', '=-').replaceAll('[UNIT]', '[m3]'),
    ];
  });
}

/** What is said of a text that is read as these options say. */
function problemsWith(text: string, args: readonly string[], skipped: readonly number[]): readonly Problem[] {
  const { columns, header, consents, decimal, delimiter } = tableOptions(
    readOptions('calc', args, tableKinds),
  );
  const parted = tableText(text, COLUMNS, { skipped: new Set(skipped), ...(delimiter && { delimiter }) });
  if (!parted.ok) return parted.problems;
  const mapping = directedMapping(parted.value, COLUMNS, columns, header);
  const read = readMapped(parted.value, COLUMNS, mapping, {
    ...consents,
    ...(decimal && { decimal }),
    check,
  });
  return read.ok ? read.value.problems : read.problems;
}

describe.each(Object.entries(ANSWERS))('%s', (code, answered) => {
  const { text, goes = [], said = {}, skipped = [], dialog, options, mended = '' } = answered;

  test('is raised', () => {
    expect(codesOf(problemsOf(code, text, goes, said, skipped))).toContain(code);
  });

  test('has an answer in the dialog', () => {
    if (dialog === 'parting') {
      const left = delimiterWords.map(([delimiter]) => tableText(text, COLUMNS, { delimiter }));
      expect(left.every(({ ok }) => ok)).toBe(true);
    } else if (dialog === 'mended') expect(codesOf(problemsOf(code, mended, goes))).not.toContain(code);
    else if (dialog !== 'choice')
      expect(codesOf(problemsOf(code, text, [...goes, ...dialog], said, skipped))).not.toContain(code);
    else {
      const question = rowsQuestions.find(({ codes }) => codes.includes(code));
      if (question === undefined) throw new Error(`no question of the dialog is about ${code}`);
      const left = question.answers.map(([answer]) =>
        codesOf(problemsOf(code, text, goes, withAnswer(said, question.key, answer), skipped)),
      );
      expect(left.some((codes) => !codes.includes(code))).toBe(true);
    }
  });

  test('has an answer on the command line, and says which', () => {
    const found = problemsOf(code, text, goes, said, skipped).find((one) => one.code === code);
    if (found === undefined) throw new Error(`${code} is not raised`);
    const hints = withRemedy(found, COLUMNS).hints.join(' ');
    if (options === 'mended') {
      // What is told of further cells stands behind the cells that are told with their remedies.
      expect(hints === '' && code !== 'cells-unread-more').toBe(false);
      expect(codesOf(problemsOf(code, mended, goes))).not.toContain(code);
      return;
    }
    const name = options.at(-2) ?? options[0] ?? '';
    expect(hints).toContain(name);
    expect(codesOf(problemsWith(text, options, skipped))).not.toContain(code);
  });

  test('proposes nothing on the command line that is not accepted', () => {
    const found = problemsOf(code, text, goes, said, skipped).find((one) => one.code === code);
    if (found === undefined) throw new Error(`${code} is not raised`);
    const before = Object.entries(said).flatMap(([key, word]) => [`--${key}`, `${word}`]);
    for (const proposal of proposalsIn(withRemedy(found, COLUMNS).hints.join(' '))) {
      const [header = ''] = text.split(/[,;\n]/);
      const args = [...before, ...proposal.map((part) => part.replace('HEADER=', `${header}=`))];
      expect([proposal, codesOf(problemsWith(text, args, skipped)).filter((one) => one === code)]).toEqual([
        proposal,
        code === 'table-nothing-taken' || code === 'column-unit-alone' ? expect.anything() : [],
      ]);
    }
  });
});
