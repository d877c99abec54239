import fc from 'fast-check';
import { expect, test } from 'vitest';
import { setCells, setEntry, setFormula } from '../../src/document/index.ts';
import { openNotebook } from '../../src/notebook/index.ts';
import { checkingOf, enterHandValue } from '../../src/review/index.ts';
import { apply } from '../apply-edit.ts';
import { blockOf, bookOf, calc, calcColumn, given, numbers, tableOf } from '../make-book.ts';

/** What the walk below does: an entry, a formula or a cell gets another text, or the one it had. */
interface Step {
  readonly kind: 'entry' | 'formula' | 'cell';
  readonly at: number;
  readonly pick: number;
}

const GIVENS = ['g0', 'g1', 'g2'];
const ROWS = 4;
/** Each formula that a line may get, with what it rests on directly. */
const FORMULAS: readonly (readonly [text: string, on: readonly string[]])[] = [
  ['g0 + g1', ['g0', 'g1']],
  ['g1 * 2', ['g1']],
  ['g2 - g0', ['g2', 'g0']],
];
const LINES = ['c0', 'c1', 'c2'];

function bookToCheck() {
  return bookOf({
    s: [
      blockOf(
        'p',
        ...GIVENS.map((name, at) => given(name, `${at + 1}`)),
        calc('c0', FORMULAS[0]?.[0] ?? ''),
        calc('c1', 'c0 + 1'),
        calc('c2', FORMULAS[1]?.[0] ?? ''),
        calc('total', 'SUM(t.b)'),
      ),
      tableOf(
        't',
        ROWS,
        numbers('a', undefined, [1, 2, 3, 4]),
        calcColumn('b', 'a * g2'),
        calcColumn('run', { formula: 'ABOVE(run; 0) + b', unit: '-' }),
      ),
    ],
  });
}

/** What the plain model knows of the book: the texts that can change. */
interface Texts {
  readonly entries: string[];
  readonly formulas: number[];
  readonly cells: number[];
}

/** What each subject rests on, worked out from the texts alone. */
function restsOn({ formulas }: Texts): Readonly<Record<string, readonly string[]>> {
  const [first = 0, second = 0] = formulas;
  const c0 = ['c0', ...(FORMULAS[first]?.[1] ?? [])];
  const cell = (row: number): readonly string[] => ['g2', `a${row}`];
  const rows = Array.from({ length: ROWS }, (_, row) => row);
  return {
    c0,
    c1: c0,
    c2: ['c2', ...(FORMULAS[second]?.[1] ?? [])],
    total: ['g2', ...rows.map((row) => `a${row}`)],
    ...Object.fromEntries(rows.map((row) => [`b${row}`, cell(row)])),
    ...Object.fromEntries(
      rows.map((row) => [`run${row}`, ['g2', ...rows.slice(0, row + 1).map((one) => `a${one}`)]]),
    ),
  };
}

const stepArbitrary: fc.Arbitrary<Step> = fc.record({
  kind: fc.constantFrom('entry', 'formula', 'cell'),
  at: fc.nat(50),
  pick: fc.nat(2),
});

test('a hand value is stale exactly when something it rests on is not as it was', () => {
  fc.assert(
    fc.property(fc.array(stepArbitrary, { maxLength: 8 }), (steps) => {
      const notebook = openNotebook(bookToCheck());
      const subjects: (readonly [key: string, item: string, row?: number])[] = [
        ...[...LINES, 'total'].map((name) => [name, name] as const),
        ...['b', 'run'].flatMap((name) =>
          Array.from({ length: ROWS }, (_, row) => [`${name}${row}`, name, row + 1] as const),
        ),
      ];
      for (const [, item, row] of subjects)
        apply(
          notebook,
          enterHandValue(notebook, { item, ...(row !== undefined && { row }) }, { entry: '1', by: 'AB' }),
        );
      // All of it was said of one book.
      expect(notebook.book.review.bases).toHaveLength(1);
      const texts: Texts = { entries: ['1', '2', '3'], formulas: [0, 1], cells: [1, 2, 3, 4] };
      const first: Texts = structuredClone(texts);
      for (const { kind, at, pick } of steps) {
        if (kind === 'entry') {
          const line = at % 3;
          texts.entries[line] = `${line + 1 + pick}`;
          apply(notebook, setEntry({ sheet: 's', part: 'p', row: `g${line}` }, texts.entries[line]));
        } else if (kind === 'formula') {
          const line = at % 2;
          texts.formulas[line] = pick;
          const row = line === 0 ? 'c0' : 'c2';
          apply(notebook, setFormula({ sheet: 's', part: 'p', row }, FORMULAS[pick]?.[0] ?? ''));
        } else {
          const row = at % ROWS;
          texts.cells[row] = row + 1 + pick;
          apply(notebook, setCells({ sheet: 's', table: 't', column: 'a' }, row, [texts.cells[row]]));
        }
        const changed = new Set([
          ...GIVENS.filter((_, one) => texts.entries[one] !== first.entries[one]),
          ...['c0', 'c2'].filter((_, one) => texts.formulas[one] !== first.formulas[one]),
          ...texts.cells.flatMap((cell, one) => (cell === first.cells[one] ? [] : [`a${one}`])),
        ]);
        const on = restsOn(texts);
        // What the formulas of the first book rested on counts where they are still the same: then it is the same.
        const expected = subjects
          .filter(([key]) => on[key]?.some((one) => changed.has(one)))
          .map(([key]) => key);
        const found = checkingOf(notebook).all.flatMap(({ subject, state }) =>
          state === 'stale'
            ? [subject.row === undefined ? subject.item : `${subject.item}${subject.row - 1}`]
            : [],
        );
        expect([...found].sort()).toEqual([...expected].sort());
      }
    }),
    { numRuns: 60 },
  );
});
