import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { templates } from '../../bench/app/mixes.ts';

interface ShippedBook {
  readonly sheets: readonly {
    readonly title: string;
    readonly parts: readonly { readonly rows?: readonly Readonly<Record<string, unknown>>[] }[];
  }[];
}

const shipped = ['fender-energy', 'pile-bearing', 'debris-haul', 'bollard-pull'].map(
  (id) => JSON.parse(readFileSync(`templates/${id}/book.quaybook.json`, 'utf8')) as ShippedBook,
);

// The bench of the page takes minutes, and would give up at a line that is called otherwise by now.
test.each(templates)('“$title” has the lines that the bench of the page works on', (work) => {
  const found = shipped.flatMap(({ sheets }) => sheets.filter(({ title }) => title === work.sheet));
  expect(found).toHaveLength(1);
  const rows = found.flatMap(({ parts }) => parts.flatMap((part) => part.rows ?? []));
  // The first one called so is the one that is worked on.
  expect(rows.find(({ label }) => label === work.given)).toMatchObject({ kind: 'given' });
  expect(rows.find(({ label }) => label === work.calc)).toMatchObject({
    kind: 'calc',
    formula: expect.any(String),
  });
});
