import { onOneLine } from './catalogue/wording.ts';
import type { Problem } from './problem.ts';

/**
 * A problem on one line, for the command line: "pile.D: lb is a mass or a force (at column 4); write lbm or lbf".
 * With the source text, columns count characters, and the line is told if there are several. A problem of no
 * particular place (an empty span at 0) has no position.
 */
export function renderProblem(problem: Problem, sourceText?: string): string {
  const cell = problem.cell === undefined ? '' : `${problem.cell}: `;
  const placed = problem.from > 0 || problem.to > 0;
  const place = placed ? ` (${position(problem.from, sourceText)})` : '';
  const hint = problem.hints.map((text) => `; ${text}`).join('');
  return onOneLine(`${cell}${problem.message}${place}${hint}`);
}

function position(from: number, sourceText: string | undefined): string {
  if (sourceText === undefined) return `at column ${from + 1}`;
  const before = sourceText.slice(0, from).split('\n');
  const column = [...(before[before.length - 1] ?? '')].length + 1;
  return sourceText.includes('\n') ? `at line ${before.length}, column ${column}` : `at column ${column}`;
}
