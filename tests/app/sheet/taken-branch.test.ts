import { expect, test } from 'vitest';
import { type Fact, takenBranch } from '../../../src/app/sheet/line/taken-branch.ts';
import { parseFormula, printSyntax } from '../../../src/language/index.ts';

const facts: Readonly<Record<string, Fact>> = {
  blank: { kind: 'blank' },
  x: { kind: 'number', value: 3 },
  y: { kind: 'number', value: 5 },
  z: { kind: 'number', value: 3 * (1 + 1e-12) },
  kind: { kind: 'text', value: 'Open pipe' },
  on: { kind: 'truth', value: true },
};

test.each([
  ['IF(ISBLANK(blank); x; blank)', 'x'],
  ['IF(ISBLANK(x); y; x)', 'x'],
  ['IF(x > y; a; IF(x > 0; b; c))', 'b'],
  ['IF(x > 0 m; a; b)', 'a'],
  ['IF(AND(x < y; kind = "open pipe"); a; b)', 'a'],
  ['IF(OR(x > y; NOT(on)); a; b)', 'b'],
  ['IF(on; a; b)', 'a'],
  ['SWITCH(kind; "closed pipe"; a; "open pipe"; b)', 'b'],
  ['SWITCH(kind; "square"; a; b)', 'b'],
  ['IFS(x > y; a; x = 3; b; TRUE; c)', 'b'],
  ['2 * IF(x < y; a + b; c)', '2 * (a + b)'],
  ['2 * IF(x < y; a * b; c) + 1', '2 * (a * b) + 1'],
])('%s is %s', (formula, taken) => {
  expect(printSyntax(takenBranch(parseFormula(formula).syntax, (name) => facts[name]))).toBe(taken);
});

test.each([
  'IF(x > unknown; a; b)',
  'IF(x > 4 m; a; b)',
  'IF(x = z; a; b)',
  'IF(x + 1 > y; a; b)',
  'SWITCH(unknown; "a"; b; c)',
  'MAX(x; y) + 1',
])('%s stays as written', (formula) => {
  const { syntax } = parseFormula(formula);
  expect(printSyntax(takenBranch(syntax, (name) => facts[name]))).toBe(printSyntax(syntax));
});
