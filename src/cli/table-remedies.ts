import { type JsonValue, listed, type Problem } from '../diagnostics/index.ts';
import { columnWords, type TableColumn } from '../tables/index.ts';
import { foldHeader } from './columns-option.ts';

/** A column of a text as a problem tells it. */
interface ToldColumn {
  readonly position: number;
  readonly header: string;
}

/** How `--columns` calls a column of the text. */
type Call = (column: ToldColumn, byNumber?: boolean) => string;

type Remedy = (found: Problem, columns: readonly TableColumn[], called: Call) => string;

/** What mends a problem with a table on the command line: the option, with what it has to say. */
const REMEDIES: Readonly<Record<string, Remedy>> = {
  'table-parting-unclear': ({ data }) =>
    data.by === 'commas'
      ? '--parting none says that a line is one cell, --parting comma that commas part cells'
      : '--parting spaces says that two or more spaces part cells, --parting none that a line is one cell',
  'column-undecided': ({ data }, columns, called) => {
    const open = data.columns as unknown as readonly ToldColumn[];
    const parts = open.map((one) => `${called(one, data.data === true)}=NAME`);
    const first = data.data === true ? '--header no says that the first row is data, and ' : '';
    return `${first}--columns "${parts.join('; ')}" says where, NAME [UNIT] with a unit, “unit of NAME” for units row by row, - for left out; NAME is ${givens(columns)}`;
  },
  'column-calculated': ({ data }, columns, called) =>
    `--columns "${called(toldIn(data))}=-" leaves it out, “=NAME [UNIT]” says where it goes; NAME is ${givens(columns)}`,
  'column-unit-unread': ({ data }, _, called) => {
    const units = data.choices as readonly string[];
    const [unit = 'UNIT', ...others] = units;
    const kind =
      units.length === 0 && words(data.wants) !== ''
        ? ` with a UNIT of the kind of ${words(data.wants)}`
        : '';
    const more = others.map((other) => ` or [${other}]`).join('') + kind;
    return `--columns "${called(toldIn(data))}=${words(data.column)} [${unit}]"${more}`;
  },
  'table-nothing-taken': (_, columns) =>
    `--columns "HEADER=NAME [UNIT]" takes one; NAME is ${givens(columns)}`,
  'column-twice': ({ data }, _, called) =>
    `--columns "${called(data.second as unknown as ToldColumn, true)}=-" leaves one of them out`,
  'column-share': ({ data }, _, called) =>
    `--columns "${called(toldIn(data))}=${words(data.column)} [%]" for per cent, [-] for parts of one`,
  'column-units-ignored': ({ data }, _, called) =>
    `--columns "${called(toldIn(data))}=unit of ${words(data.column)}" takes them row by row, “=- no units” says that they are none`,
  'row-unit-unread': ({ data }) => {
    const units = data.choices as readonly string[];
    return units.length > 0 ? `write ${listed(units)}` : 'write the unit of the number there';
  },
  'unit-left-out': ({ data }, _, called) =>
    `--columns "${called(toldIn(data))}=${words(data.column)} [${words(data.stated)}]" or [${words(data.unit)}] says what they are in`,
  'multiple-left-out': ({ data }) =>
    `convert the numbers it is about, then --skip ${Number(data.line)} leaves that line out`,
  'cells-unit-missing': ({ data }, _, called) => {
    const [first = '', ...others] = [...(data.others as readonly string[]), words(data.unit)];
    const more = others.map((other) => ` or [${other}]`).join('');
    return `--columns "${called(toldIn(data))}=${words(data.column)} [${first}]"${more} says what numbers without a unit are in`;
  },
  'row-long': ({ data }) =>
    data.columns === 1
      ? '--parting none says that a line is one cell'
      : words(data.number) === ''
        ? `put a cell that has the separator in it in quotation marks, or --skip ${Number(data.line)} leaves that line out`
        : `a number with a thousands comma needs quotation marks: "${words(data.number)}"`,
  'row-ends-blank': ({ data }) => twoOrOne(`${words(data.first)},${words(data.second)}`),
  'column-unit-alone': ({ data }) => `--columns "HEADER=${words(data.column)}" says where they stand`,
  'decimal-ambiguous': () => '--decimal point or --decimal comma says what stands in front of decimals',
  'row-total': (found) => leftOrTaken('totals', found),
  'row-sum': (found) => leftOrTaken('sums', found),
  'row-all': (found) => leftOrTaken('totals', found),
  'row-note': (found) => leftOrTaken('notes', found),
  'row-numbering': (found) => leftOrTaken('notes', found),
  'row-unnamed': (found) => leftOrTaken('unnamed', found),
  'row-short': () => '--short blank says that rows end early where their last cells are blank',
  'cells-nil': () => '--nil blank or --nil zero says what dashes and words for none are',
  'cells-parentheses': () =>
    '--parentheses minus or --parentheses plain says whether parentheses around a number are a minus',
  'rows-above-headers': () => '--notes out leaves out what is not in the table, --skip LINES these lines',
  'cells-split': ({ data }) => twoOrOne(words(data.joined)),
  'cells-split-more': () =>
    'write each number with a comma in quotation marks or part the cells by semicolons; --thousands plain says that all such are two cells',
  'table-columns-emptied': () => 'put them in the file, or --blank-missing says that they are to be blank',
  'table-no-rows': () => '--empty says that it is meant so',
};

function twoOrOne(number: string): string {
  return `write "${number}" in quotation marks for one number; --thousands plain says that all such are two cells`;
}

function leftOrTaken(option: string, { data }: Problem): string {
  const lines = data.lines as readonly number[];
  const [them, rows] = lines.length === 1 ? ['it', 'a row'] : ['them', 'rows'];
  const single = lines.length === 1 ? '' : `; --skip ${lines[0]} leaves out that line alone`;
  return `--${option} out leaves ${them} out, --${option} in takes ${them} as ${rows} like the others${single}`;
}

/**
 * A problem with a table, with the option in place of what the page offers. `headers` are those of the text, of which
 * `--columns` tells two that are equal by number.
 */
export function withRemedy(
  found: Problem,
  columns: readonly TableColumn[],
  headers: readonly string[] = [],
): Problem {
  const remedy = REMEDIES[found.code];
  return remedy === undefined
    ? found
    : { ...found, hints: [remedy(found, columns, callAmong(headers.map(foldHeader)))] };
}

/** Calls a column by its header, or by its number where that has signs of its own, is none, or is there twice. */
function callAmong(folded: readonly string[]): Call {
  const isTwice = (header: string): boolean =>
    folded.indexOf(foldHeader(header)) !== folded.lastIndexOf(foldHeader(header));
  return ({ header, position }, byNumber = false) =>
    byNumber || header === '' || /[;="#*]/.test(header) || isTwice(header) ? `#${position}` : header;
}

function toldIn(data: Problem['data']): ToldColumn {
  return { header: words(data.header), position: Number(data.position) };
}

function words(fact: JsonValue | undefined): string {
  return typeof fact === 'string' ? fact : '';
}

function givens(columns: readonly TableColumn[]): string {
  return listed(columns.filter(({ kind }) => kind === 'given').map(columnWords));
}
