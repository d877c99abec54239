import { type Problem, renderProblem } from '../../diagnostics/index.ts';
import {
  columnNamed,
  type Item,
  lineNamed,
  type Notebook,
  openNotebook,
  writeUtilisation,
} from '../../notebook/index.ts';
import { readBook } from '../books.ts';
import { AGREES, type Command, DISAGREES, REFUSES } from '../command.ts';
import { enterOptions } from '../enter.ts';
import { printGivens, printUnits } from '../givens.ts';
import { readOptions } from '../options.ts';
import { Refused, valueOrRefuse } from '../refused.ts';
import { type PrintedResult, printResult } from '../results.ts';

const kinds = { set: 'many', table: 'many', get: 'many', json: 'alone' } as const;

/** `quaybook calc`: enter values, compute, print results. */
export const calc: Command = {
  name: 'calc',
  usage: 'calc BOOK [--set NAME=VALUE]... [--table NAME=FILE.csv]... [--get NAME]... [--json]',
  help: 'computes a book and prints its results',
  run: (args, output) => {
    const options = readOptions('calc', args, kinds);
    const [name, ...more] = options.positionals;
    if (name === undefined || more.length > 0)
      throw new Refused('calc takes one BOOK: a file or a template’s id');
    const notebook = openNotebook(readBook(name));
    const entered = enterOptions(notebook, options.many('table'), options.many('set'));
    const wanted = options.many('get');
    const items = wanted.length > 0 ? wanted.map((one) => itemNamed(notebook, one)) : resultItems(notebook);
    const results = items.map((item) => [item.id, printResult(notebook, item)] as const);
    const problems = notebook.problems();
    if (options.alone('json')) {
      const [givens, units] = [printGivens(notebook), printUnits(notebook)];
      output.print(
        JSON.stringify({ results: Object.fromEntries(results), problems, givens, units }, null, 2),
      );
    } else for (const [id, result] of results) output.print(resultLine(id, result));
    const told = wanted.length > 0 ? aboutAsked(problems, results, entered) : aboutAll(problems, notebook);
    for (const found of told) output.complain(renderProblem(found));
    return statusOf(results.map(([, result]) => result));
  },
};

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
  results: readonly NamedResult[],
  entered: ReadonlySet<string>,
): readonly Problem[] {
  const asked = new Set(results.map(([id]) => id));
  return problems.filter(({ cell }) => cell !== undefined && (asked.has(cell) || entered.has(cell)));
}

/** Otherwise everything but what only waits on another line or row: its cause is said there. */
function aboutAll(problems: readonly Problem[], notebook: Notebook): readonly Problem[] {
  return problems.filter((found) => {
    const { code } = found.code === 'row-fails' ? (problemOfRow(found, notebook) ?? found) : found;
    return code !== 'waiting-on' && code !== 'waiting-on-rows';
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
      : `  ${writeUtilisation(result.utilisation, result.status === 'pass')}`;
  const value =
    result.status === 'problem' || result.status === 'waiting' ? `(${result.status})` : result.text;
  return `${id.padEnd(32)} ${value}${use}`;
}

function statusOf(results: readonly PrintedResult[]): number {
  if (results.some(({ status }) => status === 'problem' || status === 'waiting')) return REFUSES;
  return results.some(({ status }) => status === 'fail') ? DISAGREES : AGREES;
}
