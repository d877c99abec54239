import { expect, test } from 'vitest';
import {
  fail,
  inCell,
  listed,
  problem,
  quoted,
  renderProblem,
  shiftProblem,
  succeed,
} from '../../src/diagnostics/index.ts';

const fix = { label: 'kN', from: 3, to: 5, insert: 'kN' };
const slip = problem('unit-slip', { from: 3, to: 5 }, { symbol: 'KN', choices: ['kN', 'kn'] }, [fix]);

test('a problem carries its facts, and the words made of them', () => {
  expect(slip).toEqual({
    code: 'unit-slip',
    severity: 'error',
    from: 3,
    to: 5,
    message: '“KN” is not a unit here',
    hints: ['write “kN” or “kn”'],
    fixes: [fix],
    data: { symbol: 'KN', choices: ['kN', 'kn'] },
  });
});

test('a problem of a part is moved into the whole, its fixes with it', () => {
  const there = shiftProblem(slip, 10);
  expect([there.from, there.to, there.fixes[0]?.from, there.fixes[0]?.to]).toEqual([13, 15, 13, 15]);
  expect(shiftProblem(slip, 0)).toBe(slip);
});

test('outcomes', () => {
  expect(succeed(3)).toEqual({ ok: true, value: 3 });
  expect(fail(slip)).toEqual({ ok: false, problems: [slip] });
});

test.each([
  { source: undefined, says: '“KN” is not a unit here (at column 4); write “kN” or “kn”' },
  { source: '12 KN', says: '“KN” is not a unit here (at column 4); write “kN” or “kn”' },
  { source: '\u{1d44e} KN', says: '“KN” is not a unit here (at column 3); write “kN” or “kn”' },
  { source: 'a\n KN', says: '“KN” is not a unit here (at line 2, column 2); write “kN” or “kn”' },
])('on one line, with $source', ({ source, says }) => {
  expect(renderProblem(slip, source)).toBe(says);
});

test('a problem of a cell says which, and one of no place has no column', () => {
  const nowhere = inCell({ ...slip, from: 0, to: 0, hints: [] }, 'pile.D');
  expect(renderProblem(nowhere)).toBe('pile.D: “KN” is not a unit here');
});

test('what was written is quoted on one line, cut short if long', () => {
  expect(quoted('a\nb\0c\u2028d')).toBe('“a b c d”');
  expect(quoted('x'.repeat(100))).toBe(`“${'x'.repeat(59)}…”`);
  expect(renderProblem({ ...slip, message: 'a\nb' })).not.toContain('\n');
});

test('lists read as prose', () => {
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map((items) => listed(items))).toEqual([
    '',
    'a',
    'a or b',
    'a, b or c',
  ]);
  expect(listed(['a', 'b'], 'and')).toBe('a and b');
});
