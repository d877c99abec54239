import fc from 'fast-check';
import { expect, test } from 'vitest';
import * as z from 'zod/mini';
import { cellSchema, isSurelyCell } from '../../src/document/schema/columns.ts';
import { ENTRY_LENGTH_LIMIT } from '../../src/document/schema/text-schemas.ts';

test('what is surely a cell is one by the schema; of what the schema has so a long text of pairs alone is not sure', () => {
  const values = fc.oneof(
    fc.anything(),
    fc.double(),
    fc.constantFrom(
      Number.NaN,
      Number.POSITIVE_INFINITY,
      -0,
      null,
      undefined,
      '',
      'a'.repeat(ENTRY_LENGTH_LIMIT),
    ),
    fc.nat({ max: 3 }).map((more) => 'é'.repeat(ENTRY_LENGTH_LIMIT - 1 + more)),
    fc.nat({ max: 2 }).map((more) => '🏗'.repeat(ENTRY_LENGTH_LIMIT / 2 + more)),
  );
  fc.assert(
    fc.property(values, (value) => {
      const isLong = typeof value === 'string' && value.length > ENTRY_LENGTH_LIMIT;
      const isCell = z.safeParse(cellSchema, value).success;
      expect(isSurelyCell(value)).toBe(isCell && !isLong);
    }),
    { numRuns: 2000 },
  );
});
