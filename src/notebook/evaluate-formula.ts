import type { Problem } from '../diagnostics/index.ts';
import { type Book, blankBook, type Row } from '../document/index.ts';
import type { Type } from '../language/index.ts';
import { openNotebook } from './notebook.ts';
import type { Value } from './result.ts';

/** What one formula gives: a value, or what stands in its way. */
export interface Evaluation {
  readonly value?: Value;
  readonly type: Type;
  readonly problems: readonly Problem[];
}

/**
 * Evaluates one formula over givens typed as entries. `unit` asks for the result in that unit, '' for a plain number;
 * without it a sensible one is chosen.
 */
export function evaluateFormula(
  formula: string,
  given: Readonly<Record<string, string>>,
  unit?: string,
): Evaluation {
  const first = evaluate(formula, given, unit === '' ? undefined : unit);
  // A blank unit asks for a plain number, where a blank unit column would take what comes.
  return unit === '' && first.type.kind === 'number' && first.problems.length === 0
    ? evaluate(formula, given, '-')
    : first;
}

function evaluate(formula: string, given: Readonly<Record<string, string>>, unit?: string): Evaluation {
  let result = 'result';
  while (result in given) result += "'";
  const rows: Row[] = Object.entries(given).map(([name, entry], at) => ({
    id: `given-${at}`,
    kind: 'given',
    name,
    entry,
    optional: true,
  }));
  rows.push({ id: 'result', kind: 'calc', name: result, formula, ...(unit !== undefined && { unit }) });
  const notebook = openNotebook(bookOf(rows));
  const id = `eval.${result}`;
  const problems = notebook.problems().map((found) => ofGiven(found, id));
  const read = notebook.result(id);
  const type = notebook.model.items.get(id)?.type ?? { kind: 'unknown', axes: [] };
  if (read.status !== 'ok' || problems.some((found) => found.severity === 'error')) return { type, problems };
  return { value: read.value, type, problems };
}

/** A problem of the formula stands alone; one of a given names it as the person does. */
function ofGiven({ cell, ...found }: Problem, formula: string): Problem {
  return cell === undefined || cell === formula ? found : { ...found, cell: cell.slice('eval.'.length) };
}

function bookOf(rows: readonly Row[]): Book {
  return {
    ...blankBook(),
    sheets: [{ key: 'eval', title: '', parts: [{ id: 'rows', kind: 'rows', rows }] }],
  };
}
