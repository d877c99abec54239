import { inCell, type Problem, problem } from '../../diagnostics/index.ts';
import { type Path, pathText } from '../json/path.ts';
import { foldedOption } from '../option.ts';
import type { CalcColumn } from '../schema/columns.ts';
import type { Calc } from '../schema/rows.ts';

const NOWHERE = { from: 0, to: 0 };

/**
 * The rules of what computes a line or column: one formula, or methods and what chooses between them; no two methods for
 * one option or of one id, and only the last for all others.
 */
export function methodProblems(line: Calc | CalcColumn, at: Path, cell: string): Problem[] {
  const { formula, by, methods, name } = line;
  const path = pathText(at);
  const whole = formula === undefined ? by !== undefined && methods !== undefined : !by && !methods;
  if (!whole) return [inCell(problem('book-formula-or-methods', NOWHERE, { path, name }), cell)];
  const problems: Problem[] = [];
  const options = new Set<string>();
  const ids = new Map<string, string>();
  for (const [m, method] of (methods ?? []).entries()) {
    const here = pathText([...at, 'methods', m]);
    const first = ids.get(method.id);
    if (first !== undefined)
      problems.push(problem('book-id-twice', NOWHERE, { path: here, id: method.id, first }));
    ids.set(method.id, here);
    if (method.for === undefined && m < (methods ?? []).length - 1)
      problems.push(problem('book-method-not-last', NOWHERE, { path: here, name }));
    for (const option of method.for ?? []) {
      const folded = foldedOption(option);
      if (options.has(folded))
        problems.push(problem('book-option-twice', NOWHERE, { path: here, name, option }));
      options.add(folded);
    }
  }
  return problems.map((found) => inCell(found, cell));
}
