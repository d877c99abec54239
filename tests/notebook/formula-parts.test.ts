import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Typed } from '../../src/language/index.ts';
import { openNotebook } from '../../src/notebook/index.ts';
import { blockOf, bookOf, calc, calcColumn, numbers, tableOf } from '../make-book.ts';

const SEED = 20_261_129;

/** What runs over the rows, as an aggregate over them has it and as a column computes it row by row. */
const pairs = [
  ['t.a * t.b', 'a * b'],
  ['GREATER(t.a; k) - t.b', 'GREATER(a; k) - b'],
  ['IF(t.a > t.b; t.a; INDEX(t.b; 1))', 'IF(a > b; a; INDEX(t.b; 1))'],
  ['t.a - SUM(t.b)', 'a - SUM(t.b)'],
] as const;

test(`the rows of a part are those a column computes (seed ${SEED})`, () => {
  const cells = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(cells, cells, fc.constantFrom(...pairs), (a, b, [part, row]) => {
      const length = Math.min(a.length, b.length);
      const notebook = openNotebook(
        bookOf({
          s: [
            blockOf('p', calc('k', '2'), calc('m', `MAX(${part})`)),
            tableOf(
              't',
              length,
              numbers('a', '-', a.slice(0, length)),
              numbers('b', '-', b.slice(0, length)),
              calcColumn('c', row),
            ),
          ],
        }),
      );
      const item = notebook.model.items.get('s.m');
      const column = notebook.column('s.t.c');
      if (item?.kind !== 'formula' || column.status !== 'ok') throw new Error('the book does not compute');
      const { checked } = item;
      const over = checked.typed.kind === 'call' ? checked.typed.args[0] : undefined;
      const place = { item, checked };
      const elements = notebook.parts.elementsOf(over as Typed, place);
      expect([...(elements?.values ?? [])]).toEqual([...column.reading.values]);
      for (let at = 0; at < length; at += 1) {
        const one = notebook.parts.valueOf(over as Typed, { ...place, element: { table: 's.t', at } });
        expect(one?.kind === 'number' && one.si).toBe(column.reading.values[at]);
      }
      // Without a row of the table there is no one value.
      expect(notebook.parts.valueOf(over as Typed, place)).toBeUndefined();
    }),
    { seed: SEED, numRuns: 200 },
  );
});
