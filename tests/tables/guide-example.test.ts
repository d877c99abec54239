import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { templateBook } from '../../src/cli/books.ts';
import { readTable } from '../../src/tables/index.ts';

test('the list of the guide is taken as it stands by the table that the guide puts it into', () => {
  const guide = readFileSync(new URL('../../docs/guide.md', import.meta.url), 'utf8');
  const [, list = ''] = /```\n(item,material,from,[\s\S]*?)```/.exec(guide) ?? [];
  const takeoff = templateBook('debris-haul')
    .sheets.flatMap(({ parts }) => parts)
    .find((part) => part.kind === 'table' && part.name === 'takeoff');
  if (takeoff?.kind !== 'table') throw new Error('the template has no takeoff');
  const read = readTable(list, takeoff.columns);
  expect(read.ok ? [] : read.problems.map(({ message }) => message)).toEqual([]);
  expect(read.ok && read.value.length).toBe(6);
});
