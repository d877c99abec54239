import type { JsonValue } from '../diagnostics/index.ts';
import { type Book, bookSchema } from './schema/book.ts';
import { fieldNames, type Schema, schemaBelow } from './schema/walk.ts';

const LINE_WIDTH = 100;

/**
 * The text of a book's file: indented JSON with its fields in the order of the format, a small object or list on one
 * line. Equal books give equal texts, and opening the text gives the book back.
 */
export function writeBook(book: Book): string {
  return `${written(book, bookSchema, '')}\n`;
}

function written(value: JsonValue, schema: Schema | undefined, indent: string): string {
  const short = onOneLine(value, schema, LINE_WIDTH - indent.length);
  if (short !== undefined || typeof value !== 'object' || value === null)
    return short ?? JSON.stringify(value);
  const inner = `${indent}  `;
  const items = itemsOf(value, schema).map(
    ({ label, item, below }) => `${inner}${label}${written(item, below, inner)}`,
  );
  const [open, close] = Array.isArray(value) ? '[]' : '{}';
  return `${open}\n${items.join(',\n')}\n${indent}${close}`;
}

/** The value on one line, or nothing if that takes more than `width` characters. */
function onOneLine(value: JsonValue, schema: Schema | undefined, width: number): string | undefined {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  // An item takes three characters at least, so a long list is known not to fit without trying.
  if (Array.isArray(value) && value.length * 3 > width) return undefined;
  let text = '';
  for (const { label, item, below } of itemsOf(value, schema)) {
    const short = onOneLine(item, below, width - text.length);
    if (short === undefined) return undefined;
    text += `${text === '' ? '' : ', '}${label}${short}`;
    if (text.length > width) return undefined;
  }
  if (Array.isArray(value)) return `[${text}]`;
  return text === '' ? '{}' : `{ ${text} }`;
}

interface Item {
  readonly label: string;
  readonly item: JsonValue;
  readonly below: Schema | undefined;
}

function itemsOf(value: object, schema: Schema | undefined): Item[] {
  const below = (step: string | number): Schema | undefined => schema && schemaBelow(schema, value, step);
  if (Array.isArray(value)) return value.map((item) => ({ label: '', item, below: below(0) }));
  const order = schema === undefined ? [] : fieldNames(schema, value);
  const rank = (key: string): number => order.indexOf(key);
  return Object.entries(value)
    .filter(([, item]) => item !== undefined)
    .sort(([a], [b]) => rank(a) - rank(b) || (a < b ? -1 : 1))
    .map(([key, item]) => ({ label: `${JSON.stringify(key)}: `, item, below: below(key) }));
}
