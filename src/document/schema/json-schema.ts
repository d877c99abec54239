import * as z from 'zod/mini';
import type { JsonValue } from '../../diagnostics/index.ts';
import { bookSchema } from './book.ts';
import { columnSchema } from './columns.ts';
import { rowSchema } from './rows.ts';

/**
 * The format of a book as a JSON Schema (draft 2020-12), made from the schema that reads books. The rules between
 * the parts of a book (unique names and ids, lengths of columns) are beyond what it can say.
 */
export function bookJsonSchema(): Readonly<Record<string, JsonValue>> {
  const named = z.registry<{ id: string }>();
  named.add(rowSchema, { id: 'row' });
  named.add(columnSchema, { id: 'column' });
  const { $schema, ...rest } = z.toJSONSchema(bookSchema, { metadata: named });
  return JSON.parse(JSON.stringify({ $schema, title: 'Quaybook book', ...rest }));
}
