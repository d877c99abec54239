import type { Step } from './kind.ts';
import type { Failure } from './walk.ts';

/** A failure as a person reads it: the steps that lead to it, and what differs. */
export function failureWords(
  failure: Failure & { readonly seed: number; readonly repeats?: boolean },
): string {
  const { book, seed, steps, what, lines, repeats } = failure;
  const again = repeats === false ? ' (does not come again by itself)' : '';
  return [
    `${what} differs in ${book}, seed ${seed}, after ${steps.length} steps${again}:`,
    ...steps.map((step, at) => `  ${at + 1}. ${stepWords(step)}`),
    ...lines.map((line) => `  ! ${line}`),
  ].join('\n');
}

function stepWords({ kind, args }: Step): string {
  return args === null || args === '' ? kind : `${kind} ${JSON.stringify(args)}`;
}
