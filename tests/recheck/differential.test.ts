import { expect, test } from 'vitest';
import type { Book } from '../../src/document/index.ts';
import { functionTable } from '../../src/language/index.ts';
import { openNotebook, recheckProgram } from '../../src/notebook/index.ts';
import { recheck } from '../../src/recheck/index.ts';

import { randomFrom } from './random.ts';
import { randomBook } from './random-book.ts';
import { functionsIn } from './random-formula.ts';

const SEED = 20_261_125;
const BOOKS = 60;

/** Every formula of a book by the id of its line or column. */
function formulasOf(book: Book): ReadonlyMap<string, string> {
  return new Map(
    book.sheets.flatMap(({ key, parts }) =>
      parts.flatMap((part) => {
        if (part.kind === 'rows')
          return part.rows.flatMap((row) =>
            'formula' in row ? [[`${key}.${row.name}`, row.formula] as const] : [],
          );
        if (part.kind !== 'table') return [];
        return part.columns.flatMap((column) =>
          'formula' in column ? [[`${key}.${part.name}.${column.name}`, column.formula] as const] : [],
        );
      }),
    ),
  );
}

test('random formulas over every function have the same values in both engines', async () => {
  console.log(`recheck: random books start from seed ${SEED}`);
  const rechecked = new Map<string, number>();
  const valued = new Map<string, number>();
  const left = new Map<string, number>();
  const wrong: string[] = [];
  let formulas = 0;
  let refused = 0;
  const count = (into: Map<string, number>, name: string) => into.set(name, (into.get(name) ?? 0) + 1);
  for (let at = 0; at < BOOKS; at += 1) {
    const book = randomBook(randomFrom(SEED + at));
    const notebook = openNotebook(book);
    const { program, values } = recheckProgram(notebook);
    const report = await recheck(program, values);
    const named = formulasOf(book);
    wrong.push(
      ...report.findings.map((finding) => `book ${at}: ${finding.message}: ${named.get(finding.id)}`),
    );
    const skipped = new Set(report.notRechecked.map(({ id }) => id));
    for (const [id, formula] of named) {
      const item = notebook.model.items.get(id);
      if (item && 'checked' in item && item.checked.problems.length > 0) {
        refused += 1;
        if (process.env.SHOW) console.log(formula, item.checked.problems.map((x) => x.message).join(' | '));
        continue;
      }
      formulas += 1;
      const has =
        (program.tables.some((t) => id.startsWith(`${t.id}.`)) ? values(id, 0) : values(id)) !== undefined;
      for (const { name } of functionsIn(formula)) {
        count(skipped.has(id) ? left : rechecked, name);
        if (has && !skipped.has(id)) count(valued, name);
      }
    }
  }
  console.log(
    formulas,
    refused,
    functionTable
      .map(
        ({ name }) => `${name} ${rechecked.get(name) ?? 0}/${valued.get(name) ?? 0}/${left.get(name) ?? 0}`,
      )
      .join('  '),
  );
  console.log(wrong.length);
  expect(wrong.slice(0, 40)).toEqual([]);
});
