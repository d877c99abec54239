import type { Problem } from '../diagnostics/index.ts';

/** The first problem that leaves no value, if there is one. */
export function firstError(problems: readonly Problem[]): Problem | undefined {
  return problems.find((found) => found.severity === 'error');
}
