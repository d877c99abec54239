import { expect, test } from 'vitest';
import { type Notebook, openNotebook } from '../../../src/notebook/index.ts';
import { changeList } from '../../../src/record/index.ts';
import { compareBooks } from '../../../src/review/index.ts';
import { blockOf, bookOf, calc, check, given } from '../../make-book.ts';

const bookWith = (b: string, c: string): Notebook =>
  openNotebook(
    bookOf({
      s: [
        blockOf(
          'p',
          given('a', '0.1 m', 'm'),
          given('b', b, 'm'),
          given('c', c, 'm'),
          calc('d', { formula: 'a + b', unit: 'm' }),
          check('holds', 'd <= c'),
        ),
      ],
    }),
  );

test('a side of a check that differs by no more than rounding is not told as changed', () => {
  // 0.1 + 0.2 is 0.30000000000000004, 0.1 + 0.19999999999999998 is 0.3.
  const [old, next] = [bookWith('0.2 m', '1 m'), bookWith('0.19999999999999998 m', '2 m')];
  const { sheets } = old.book;
  const lines = changeList(compareBooks(old, next), { before: sheets, after: sheets });
  const told = lines.find((line) => line.includes('check s.holds'));
  expect(told).toContain('capacity 1 m → 2 m');
  expect(told).not.toContain('demand');
});
