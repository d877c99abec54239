import { listed } from '../diagnostics/index.ts';
import { type Consents, type Decimal, type Delimiter, lineNumbers } from '../tables/index.ts';
import type { HeaderOption } from './columns-option.ts';
import type { GivenOptions, OptionKinds } from './options.ts';
import { Refused } from './refused.ts';
import { shorten } from './shorten.ts';

/** The options that say how the files of `--table` are read; they hold for all of them. */
export const tableKinds = {
  columns: 'many',
  parting: 'once',
  decimal: 'once',
  header: 'once',
  totals: 'once',
  sums: 'once',
  notes: 'once',
  unnamed: 'once',
  nil: 'once',
  parentheses: 'once',
  short: 'once',
  skip: 'many',
  empty: 'alone',
  'blank-missing': 'alone',
  thousands: 'once',
} as const satisfies OptionKinds;

/** What was said of the files of `--table`. */
export interface TableOptions {
  readonly columns: readonly string[];
  readonly header: HeaderOption;
  readonly decimal: Decimal | undefined;
  /** What parts the cells of a line; found out where it is not said. */
  readonly delimiter: Delimiter | undefined;
  readonly skipped: ReadonlySet<number>;
  readonly consents: Consents;
  /** Whether columns that a file lacks may become blank. */
  readonly blankMissing: boolean;
}

/** What `--parting` calls what parts the cells of a line. */
const PARTINGS = {
  comma: ',',
  semicolon: ';',
  bar: '|',
  tab: '\t',
  spaces: '  ',
  none: '\t',
} as const satisfies Readonly<Record<string, Delimiter>>;

/** Reads what was said of the files of `--table`. */
export function tableOptions(options: GivenOptions): TableOptions {
  const rows = ['out', 'in'] as const;
  const totals = oneOf(options, 'totals', rows);
  const sums = oneOf(options, 'sums', rows);
  const notes = oneOf(options, 'notes', rows);
  const unnamed = oneOf(options, 'unnamed', rows);
  const nil = oneOf(options, 'nil', ['blank', 'zero'] as const);
  const parentheses = oneOf(options, 'parentheses', ['minus', 'plain'] as const);
  const short = oneOf(options, 'short', ['blank'] as const);
  const thousands = oneOf(options, 'thousands', ['plain'] as const);
  const words = Object.keys(PARTINGS) as (keyof typeof PARTINGS)[];
  const parting = oneOf(options, 'parting', words);
  return {
    columns: options.many('columns'),
    delimiter: parting === undefined ? undefined : PARTINGS[parting],
    header: oneOf(options, 'header', ['yes', 'no'] as const),
    decimal: oneOf(options, 'decimal', ['point', 'comma'] as const),
    skipped: new Set(options.many('skip').flatMap(linesOf)),
    blankMissing: options.alone('blank-missing'),
    consents: {
      ...(totals !== undefined && { totals }),
      ...(sums !== undefined && { sums }),
      ...(notes !== undefined && { notes }),
      ...(unnamed !== undefined && { unnamed }),
      ...(nil !== undefined && { nil }),
      ...(parentheses !== undefined && { parentheses }),
      ...(short !== undefined && { short }),
      ...(thousands !== undefined && { thousands }),
      ...(options.alone('empty') && { noRows: true }),
    },
  };
}

function oneOf<T extends string>(options: GivenOptions, name: string, words: readonly T[]): T | undefined {
  const said = options.once(name);
  if (said === undefined) return undefined;
  const found = words.find((word) => word === said.trim());
  if (found === undefined)
    throw new Refused(
      `--${name} takes ${listed(words)}, and “${shorten(said)}” is ${words.length > 2 ? 'none of them' : words.length > 1 ? 'neither' : 'not that'}`,
    );
  return found;
}

/** The lines of `1-3, 14`. */
function linesOf(said: string): readonly number[] {
  const lines = lineNumbers(said);
  if (lines === undefined)
    throw new Refused(`--skip takes lines of the file as 1-3,14, and “${shorten(said)}” is none`);
  return lines;
}
