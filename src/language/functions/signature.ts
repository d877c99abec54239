import type { FunctionEntry } from './entry.ts';

/** How a function is called: `IF(condition; then; otherwise)`, optional arguments in brackets, repeats by `…`. */
export function signatureOf(fn: FunctionEntry): string {
  const words = fn.parameters.map((parameter) =>
    parameter.optional ? `[${parameter.name}]` : parameter.name,
  );
  if (fn.parameters.some((parameter) => parameter.repeats)) words.push('…');
  return `${fn.name}(${words.join('; ')})`;
}
