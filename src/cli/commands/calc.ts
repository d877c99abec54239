import { type Problem, renderProblem } from '../../diagnostics/index.ts';
import {
  columnNamed,
  type Item,
  lineNamed,
  type Notebook,
  openNotebook,
  writeUtilisation,
} from '../../notebook/index.ts';
import { failureWords, statedLines } from '../../record/index.ts';
import { readBook } from '../books.ts';
import { AGREES, BY_STATED, type Command, DISAGREES, REFUSES } from '../command.ts';
import { enterOptions } from '../enter.ts';
import { printGivens, printUnits } from '../givens.ts';
import { methodLines } from '../methods.ts';
import { readOptions } from '../options.ts';
import { printJson } from '../print-json.ts';
import { reasonsOf } from '../reasons.ts';
import { Refused, valueOrRefuse } from '../refused.ts';
import { type PrintedResult, type PrintedStatedCell, printResult, printStated } from '../results.ts';
import { tableKinds, tableOptions } from '../table-options.ts';

const kinds = {
  set: 'many',
  reason: 'many',
  table: 'many',
  get: 'many',
  json: 'alone',
  ...tableKinds,
} as const;

/** `quaybook calc`: enter values, compute, print results. */
export const calc: Command = {
  name: 'calc',
  usage:
    'calc BOOK [--set NAME=VALUE]... [--reason NAME=WORDS]... [--table NAME=FILE.csv]... [--get NAME]... [--json]\n' +
    '      [--columns "HEADER=NAME [UNIT]; #3=NAME; HEADER=-; *=-"] [--decimal point|comma] [--header yes|no]\n' +
    '      [--totals out|in] [--sums out|in] [--notes out|in] [--unnamed out|in] [--skip LINES] [--thousands plain]\n' +
    '      [--parting comma|semicolon|tab|bar|spaces|none]\n' +
    '      [--nil blank|zero] [--parentheses minus|plain] [--short blank] [--empty] [--blank-missing]',
  help:
    'computes a book and prints its results; --set on a calculated line, or on a side of a check as NAME.demand or ' +
    'NAME.capacity, states a value in its place, and --reason says why; --table on a calculated column states the cells ' +
    'of a file with the columns “row” and the column’s name; the status is 3 where all checks hold and one only by a stated ' +
    'value; what follows --json says how the files of --table are read',
  run: (args, output) => {
    const options = readOptions('calc', args, kinds);
    const [name, ...more] = options.positionals;
    if (name === undefined || more.length > 0)
      throw new Refused('calc takes one BOOK: a file or a template’s id');
    const notebook = openNotebook(readBook(name));
    const entered = enterOptions(notebook, options.many('table'), options.many('set'), {
      ...tableOptions(options),
      reasons: reasonsOf(options.many('reason')),
    });
    notebook.judgeStated();
    const wanted = options.many('get');
    const items = wanted.length > 0 ? wanted.map((one) => itemNamed(notebook, one)) : resultItems(notebook);
    // The values of a long column are let go of as soon as they are printed.
    const statuses: PrintedResult['status'][] = [];
    const results = function* (of: Iterable<Item>): Iterable<NamedResult> {
      for (const item of of) {
        const result = printResult(notebook, item);
        statuses.push(result.status);
        yield [item.id, result];
      }
    };
    const ids = new Set(items.map(({ id }) => id));
    if (options.alone('json')) {
      const [givens, units] = [printGivens(notebook), printUnits(notebook)];
      const once = new Map(items.map((item) => [item.id, item])).values();
      const rest = {
        problems: notebook.problems(),
        ...(Object.keys(entered.tables).length > 0 && { tables: entered.tables }),
        stated: printStated(notebook),
        givens,
        units,
      };
      printJson({ results: results(once) }, rest, output);
    } else {
      for (const [id, result] of results(items)) {
        const [first = '', ...rows] = wanted.length > 0 ? askedLines(id, result) : [resultLine(id, result)];
        const item = notebook.model.items.get(id);
        const below = item
          ? [
              ...methodLines(notebook, item),
              ...failureWords(notebook, item, 'written').map((line) => `  ${line}`),
            ]
          : [];
        for (const line of [first, ...below, ...rows]) output.print(line);
      }
      const stated = statedLines(notebook, wanted.length > 0 ? ids : undefined);
      if (stated.length > 0) for (const line of ['', 'stated values:', ...stated]) output.print(line);
    }
    for (const remark of entered.remarks) output.complain(remark);
    const problems = notebook.problems();
    const told = (
      wanted.length > 0 ? aboutAsked(problems, ids, entered.ids) : aboutAll(problems, notebook)
    ).filter((found) => !isToldByCell(found, entered.ids));
    for (const found of told) output.complain(renderProblem(found));
    return statusOf(statuses);
  },
};

/** Whether the cells of a column that was entered were told one by one already. */
function isToldByCell({ code, cell }: Problem, entered: ReadonlySet<string>): boolean {
  return code === 'column-out-of-range' && cell !== undefined && entered.has(cell);
}

/** A result that was asked for: a column with its values, one a line. */
function askedLines(id: string, result: PrintedResult): readonly string[] {
  if (result.values === undefined) return [resultLine(id, result)];
  const unit = result.unit === '' || result.unit === '-' ? '' : ` ${result.unit}`;
  const stated = new Set(isCells(result.stated) ? result.stated.map(({ row }) => row) : []);
  return [
    resultLine(id, result),
    ...result.values.map((value, at) => {
      const text =
        value === null ? '(no value)' : typeof value === 'number' ? `${value}${unit}` : String(value);
      return `  ${String(at + 1).padStart(6)}  ${text}${stated.has(at + 1) ? '  stated' : ''}`;
    }),
  ];
}

function resultItems(notebook: Notebook): readonly Item[] {
  return [...notebook.model.items.values()].filter(
    (item) => item.kind === 'formula' || item.kind === 'formula column',
  );
}

function itemNamed(notebook: Notebook, name: string): Item {
  const line = lineNamed(notebook.model, name);
  if (line.ok) return line.value;
  const column = columnNamed(notebook.model, name);
  return column.ok ? column.value : valueOrRefuse(line, '--get');
}

type NamedResult = readonly [id: string, result: PrintedResult];

/** With `--get`: what concerns the results asked for, and what was entered. */
function aboutAsked(
  problems: readonly Problem[],
  asked: ReadonlySet<string>,
  entered: ReadonlySet<string>,
): readonly Problem[] {
  const tables = new Set([...asked].map(tableOf));
  return problems.filter(({ cell, code }) => {
    if (cell === undefined) return false;
    // What is blank in a row is told at the blank cell, whichever column was asked for.
    return asked.has(cell) || entered.has(cell) || (code === 'row-incomplete' && tables.has(tableOf(cell)));
  });
}

const tableOf = (column: string): string => column.slice(0, column.lastIndexOf('.'));

const waitsOnly: ReadonlySet<string> = new Set([
  'waiting-on',
  'waiting-on-rows',
  'rows-blank',
  'aggregate-row-fails',
]);

/** Otherwise everything but what only waits on another line or row: its cause is said there. */
function aboutAll(problems: readonly Problem[], notebook: Notebook): readonly Problem[] {
  return problems.filter((found) => {
    const { code, cell, data } =
      found.code === 'row-fails' ? (problemOfRow(found, notebook) ?? found) : found;
    if (code === 'key-not-found') return data.entered === undefined || data.entered === cell;
    return !waitsOnly.has(code);
  });
}

function problemOfRow({ cell, data }: Problem, notebook: Notebook): Problem | undefined {
  if (cell === undefined || typeof data.row !== 'number') return undefined;
  const column = notebook.column(cell);
  return column.status === 'ok' ? column.reading.problemAt(data.row - 1) : column.problem;
}

function resultLine(id: string, result: PrintedResult): string {
  const use =
    result.utilisation === undefined
      ? ''
      : `  ${writeUtilisation(result.utilisation, result.value === true)}`;
  const value =
    result.status === 'problem' || result.status === 'waiting' ? `(${result.status})` : result.text;
  return `${id.padEnd(32)} ${value}${use}${result.stated ? `  ${statedWords(result.stated)}` : ''}`;
}

/** That something is stated in a line, and what; what is computed in its place stands in the list below all results. */
function statedWords(stated: NonNullable<PrintedResult['stated']>): string {
  if ('entry' in stated) return 'stated';
  if (isCells(stated)) return `${stated.length} stated`;
  return `${Object.keys(stated).join(' and ')} stated`;
}

/** Whether what is stated are cells of a column. */
function isCells(stated: PrintedResult['stated']): stated is readonly PrintedStatedCell[] {
  return Array.isArray(stated);
}

function statusOf(statuses: readonly PrintedResult['status'][]): number {
  if (statuses.some((status) => status === 'problem' || status === 'waiting')) return REFUSES;
  if (statuses.some((status) => status === 'fail' || status === 'out-of-range')) return DISAGREES;
  return statuses.includes('by-stated') ? BY_STATED : AGREES;
}
