/** Steps from the top of a JSON document to a place in it: field names, ids or keys, and list indices. */
export type Path = readonly (string | number)[];

/** A path as a person reads it: `sheets[0].parts[2].rows[1].entry`; the document itself is `the book`. */
export function pathText(path: Path): string {
  if (path.length === 0) return 'the book';
  return path.map(stepText).join('');
}

function stepText(step: string | number, position: number): string {
  if (typeof step === 'number') return `[${step}]`;
  if (/^[\p{L}_][\p{L}\p{N}_'-]*$/u.test(step)) return position === 0 ? step : `.${step}`;
  return `[${JSON.stringify(step.length > 60 ? `${step.slice(0, 59)}…` : step)}]`;
}
