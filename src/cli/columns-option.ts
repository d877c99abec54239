import { listed, nearest, quoted } from '../diagnostics/index.ts';
import {
  columnWords,
  type Destination,
  headerColumn,
  looksLikeData,
  type Mapping,
  namedMapping,
  type TableColumn,
  type TableText,
  type TextColumn,
  textColumns,
  unitOfHeader,
} from '../tables/index.ts';
import { Refused } from './refused.ts';
import { shorten } from './shorten.ts';

/** One part of `--columns`: which column of the file, and what it goes to. */
interface Direction {
  /** Its header, `#3` for the third, `*` for all that are not settled. */
  readonly from: string;
  /** `NAME`, `NAME [UNIT]`, `unit of NAME`, `-` for nowhere, or `- no units`. */
  readonly to: string;
}

/** What `--header` says of the first row: that it names the columns, or that it is data. */
export type HeaderOption = 'yes' | 'no' | undefined;

/**
 * What the columns of a text go to: what their headers say, and before that what `--columns` says:
 * `HEADER=NAME [UNIT]; #3=NAME; Remarks=-; *=-`. A text whose columns are all told by their number and whose first row
 * looks like data has no headers.
 */
export function directedMapping(
  text: TableText,
  columns: readonly TableColumn[],
  said: readonly string[],
  header: HeaderOption,
): Mapping {
  const directions = said.flatMap(directionsOf);
  const isNumbered = directions.length > 0 && directions.every(({ from }) => /^#\d+$|^\*$/.test(from));
  const isData = isNumbered && looksLikeData(text) && !namesMost(text, columns);
  const headed = header === undefined ? !isData : header === 'yes';
  const found = textColumns(text, headed);
  const goes = new Map(headed ? namedMapping(text, columns).goes : []);
  for (const { from, to } of directions) {
    if (from === '*') continue;
    const column = columnOf(from, found, text);
    goes.set(column.position, destinationOf(to, column, columns, text));
  }
  const rest = directions.find(({ from }) => from === '*');
  if (rest !== undefined) {
    if (rest.to !== '-')
      throw new Refused(`--columns: “*=${shorten(rest.to)}” is none; “*=-” leaves the others out`);
    for (const { position } of found) {
      const to = goes.get(position);
      const isTaken =
        to?.kind === 'unit' ||
        (to?.kind === 'out' && to.unitless) ||
        (to?.kind === 'column' && columns.find(({ name }) => name === to.name)?.kind === 'given');
      if (!isTaken) goes.set(position, { kind: 'out' });
    }
  }
  return { headed, goes };
}

/** Whether most cells of the first row name columns: then it has headings, and a blank one among them. */
function namesMost(text: TableText, columns: readonly TableColumn[]): boolean {
  const filled = text.top.cells.filter((cell) => cell.trim() !== '').length;
  return namedMapping(text, columns).goes.size * 2 > filled;
}

function directionsOf(said: string): readonly Direction[] {
  return said
    .split(';')
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map((part) => {
      const at = part.lastIndexOf('=');
      const [from, to] = [part.slice(0, at).trim(), part.slice(at + 1).trim()];
      if (at < 1 || from === '' || to === '')
        throw new Refused(`--columns takes “HEADER=NAME [UNIT]; …”, and “${shorten(part)}” is none`);
      return { from, to };
    });
}

/** The column of the file that is called so: by its number, its header, or its header without the unit in it. */
function columnOf(from: string, found: readonly TextColumn[], { registry }: TableText): TextColumn {
  const [, number] = /^#(\d+)$/.exec(from) ?? [];
  const folded = foldHeader(from);
  const called = found.filter(({ position, header }) =>
    number === undefined ? foldHeader(header) === folded : position === Number(number) - 1,
  );
  const named: TableColumn = { name: from, kind: 'given' };
  const [column, second] =
    called.length > 0 || number !== undefined
      ? called
      : found.filter(({ header }) => headerColumn(header, [named], registry) !== undefined);
  if (column !== undefined && second === undefined) return column;
  if (second !== undefined)
    throw new Refused(
      `--columns: two columns of the file are called “${shorten(from)}”; tell them by number, #1, #2 …`,
    );
  const headers = found.map(({ header }) => header).filter((header) => header !== '');
  const near = nearest(from, headers, 1).map((one) => `; did you mean ${quoted(one)}?`);
  const are =
    headers.length === 0
      ? '; it has no headings'
      : `; its headings are read as ${listed(headers.map(quoted), 'and')}: --skip LINES leaves out lines that are none`;
  throw new Refused(`--columns: the file has no column “${shorten(from)}”${near.join('') || are}`);
}

function destinationOf(
  to: string,
  from: TextColumn,
  columns: readonly TableColumn[],
  { registry }: TableText,
): Destination {
  if (to === '-') return { kind: 'out' };
  if (/^-\s*no units?$/i.test(to)) return { kind: 'out', unitless: true };
  const named = headerColumn(to, columns, registry);
  const [, numbers] = /^units? of (.+)$/i.exec(to) ?? [];
  const of = named === undefined && numbers !== undefined && headerColumn(numbers, columns, registry);
  if (of) return { kind: 'unit', of: of.column.name };
  if (named === undefined) {
    const givens = columns.filter(({ kind }) => kind === 'given').map(columnWords);
    throw new Refused(
      `--columns: the table has no column “${shorten(to)}” with a unit that it reads; its columns are ${listed(givens, 'and')}`,
    );
  }
  const { column } = named;
  const unit = named.unit === '' ? unitOfHeader(from, column, registry) : named.unit;
  return { kind: 'column', name: column.name, unit };
}

/** A header as it is compared with what is said: without regard to capitals and spaces. */
export function foldHeader(header: string): string {
  return header.trim().replace(/\s+/g, ' ').toLowerCase();
}
