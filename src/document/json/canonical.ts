import type { JsonValue } from '../../diagnostics/index.ts';

/**
 * The one text of a JSON value: keys sorted by their UTF-16 units, no white space, numbers and texts as ECMAScript
 * writes them (the JSON Canonicalization Scheme, RFC 8785). Texts are not normalised. Equal values have equal texts
 * whatever the order of their keys; a field that is `undefined` counts as absent.
 *
 * @throws RangeError where a number is not finite: JSON has no such value.
 */
export function canonicalJson(value: JsonValue): string {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`JSON has no ${value}`);
    return JSON.stringify(value);
  }
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (isList(value)) {
    let text = '[';
    for (let i = 0; i < value.length; i++) text += (i === 0 ? '' : ',') + canonicalJson(value[i] ?? null);
    return `${text}]`;
  }
  let text = '{';
  for (const key of Object.keys(value).sort()) {
    const field = value[key];
    if (field === undefined) continue;
    text += `${text === '{' ? '' : ','}${JSON.stringify(key)}:${canonicalJson(field)}`;
  }
  return `${text}}`;
}

function isList(value: object): value is readonly JsonValue[] {
  return Array.isArray(value);
}
