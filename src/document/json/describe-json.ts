import { quoted } from '../../diagnostics/index.ts';

/** A JSON value as a message names it: texts in quotation marks, lists and objects by their size. */
export function describeJson(value: unknown): string {
  if (value === undefined) return 'missing';
  if (value === null) return 'null';
  if (typeof value === 'string') return quoted(value);
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  return typeof value === 'number' || typeof value === 'boolean' ? String(value) : 'an object';
}
