import { renderProblem } from '../../diagnostics/index.ts';
import type { Type } from '../../language/index.ts';
import { evaluateFormula, spelledName, spellingProblems, type Value } from '../../notebook/index.ts';
import { describeDimension, writeQuantity } from '../../units/index.ts';
import { AGREES, type Command, type Output, REFUSES } from '../command.ts';
import { numberIn } from '../number-in.ts';
import { type GivenOptions, readOptions, splitAssignment } from '../options.ts';
import { type FormulaToRun, runFormula } from '../pages/run-formula.ts';
import { Refused, refusedBy } from '../refused.ts';

const kinds = { given: 'many', in: 'once', unit: 'once', json: 'alone' } as const;

/** `quaybook eval`: one formula at the prompt. */
export const evaluate: Command = {
  name: 'eval',
  usage:
    'eval FORMULA [--given NAME=ENTRY]... [--given "TABLE.COLUMN=[ENTRY, ENTRY]"]... [--in TABLE]\n' +
    '      [--unit UNIT] [--json]',
  help: 'computes one formula over values and columns given beside it, as a line or as a column of a table',
  run: (args, output) => {
    const options = readOptions('eval', args, kinds);
    const [formula, ...more] = options.positionals;
    if (formula === undefined || more.length > 0)
      throw new Refused('eval takes one FORMULA, in quotation marks');
    const given = readGivens(options.many('given'));
    const within = options.once('in');
    if (within !== undefined || Object.values(given).some((entry) => typeof entry !== 'string'))
      return overTables({ formula, given, ...(within !== undefined && { within }) }, options, output);
    const lines = Object.fromEntries(Object.entries(given).map(([name, entry]) => [name, String(entry)]));
    const { value, type, problems } = evaluateFormula(formula, lines, options.once('unit'));
    if (options.alone('json')) {
      const printed = value ? printValue(value) : { value: null, unit: null, text: null };
      output.print(JSON.stringify({ ...printed, dimension: dimensionOf(type), problems }, null, 2));
    } else if (value) output.print(printValue(value).text);
    for (const found of problems) output.complain(renderProblem(found));
    return value ? AGREES : REFUSES;
  },
};

/** A formula over columns: one value, or one a row where it is itself a column of the table after `--in`. */
function overTables(asked: FormulaToRun, options: GivenOptions, output: Output): number {
  const unit = options.once('unit');
  const { value, unit: of, problems } = runFormula({ ...asked, ...(unit !== undefined && { unit }) });
  const values = Array.isArray(value) ? value : [value];
  const isWhole = values.length > 0 && values.every((one) => one !== undefined);
  if (options.alone('json')) {
    const printed = Array.isArray(value)
      ? { values: value.map((one) => one ?? null), unit: of }
      : { value: value ?? null, unit: of };
    output.print(JSON.stringify({ ...printed, problems }, null, 2));
  } else for (const one of values) output.print(one === undefined ? '(no value)' : withUnit(one, of));
  for (const found of problems) output.complain(renderProblem(found));
  return isWhole ? AGREES : REFUSES;
}

function withUnit(value: number | string | boolean, unit: string): string {
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return typeof value === 'number' && unit !== '' && unit !== '-' ? `${value} ${unit}` : `${value}`;
}

type Givens = Readonly<Record<string, string | readonly string[]>>;

function readGivens(texts: readonly string[]): Givens {
  const given = new Map<string, string | readonly string[]>();
  for (const text of texts) {
    const [written, entry] = splitAssignment('given', text);
    const parts = written.split('.').map((part) => spelledName(part));
    const wrong = parts.flatMap((part) => spellingProblems(part));
    if (wrong.length > 0) throw refusedBy(wrong, '--given');
    if (parts.length > 2)
      throw new Refused(`--given takes NAME or TABLE.COLUMN, and “${written}” is neither`);
    const name = parts.join('.');
    if (given.has(name)) throw new Refused(`--given ${name} stands twice`);
    given.set(name, parts.length === 2 ? cellsOf(name, entry) : entry);
  }
  evenColumns(given);
  return Object.fromEntries(given);
}

/** The entries of a column, parted by semicolons, or where there are none by commas: `[1 m, 2 m]`. */
function cellsOf(name: string, entry: string): readonly string[] {
  const [, inner] = /^\s*\[(.*)\]\s*$/s.exec(entry) ?? [];
  if (inner === undefined)
    throw new Refused(`--given ${name} is a column, and takes its entries in brackets: [1 m, 2 m, 3 m]`);
  if (inner.trim() === '') return [];
  return inner.split(inner.includes(';') ? ';' : ',').map((cell) => cell.trim());
}

/** Columns of one table have one length. */
function evenColumns(given: ReadonlyMap<string, string | readonly string[]>): void {
  const lengths = new Map<string, number>();
  for (const [name, cells] of given) {
    if (typeof cells === 'string') continue;
    const table = name.slice(0, name.indexOf('.'));
    const length = lengths.get(table) ?? cells.length;
    if (length !== cells.length)
      throw new Refused(
        `--given ${name} has ${cells.length} entries, and the columns of ${table} before it ${length}`,
      );
    lengths.set(table, length);
  }
}

function printValue(value: Value) {
  switch (value.kind) {
    case 'text':
      return { value: value.text, unit: '', text: value.text };
    case 'truth':
      return { value: value.truth, unit: '', text: value.truth ? 'TRUE' : 'FALSE' };
    case 'number': {
      const text = writeQuantity(value.si, value.unit);
      const number = value.unit.point === 'date' ? text : numberIn(value.si, value.unit);
      return { value: number, unit: value.unit.text === '-' ? '' : value.unit.text, text };
    }
  }
}

function dimensionOf(type: Type): string | null {
  switch (type.kind) {
    case 'number':
      return type.dimension.key === '' ? '' : describeDimension(type.dimension);
    case 'point':
      return type.of;
    case 'unknown':
      return null;
    default:
      return type.kind;
  }
}
