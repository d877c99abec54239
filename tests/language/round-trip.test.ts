import { expect, test } from 'vitest';
import { parseFormula, printSyntax } from '../../src/language/index.ts';
import { anyValue, grow, printPiece, randomFrom } from './generate/index.ts';
import { randomSyntax } from './random-syntax.ts';
import { SEED } from './seed.ts';
import { templateFormulas } from './template-formulas.ts';
import { writeTree } from './tree-notation.ts';

test('what is printed reads as the same tree, without a problem', () => {
  const random = randomFrom(SEED + 4);
  for (let n = 0; n < 10_000; n += 1) {
    const syntax = randomSyntax(random, random.below(5));
    const printed = printSyntax(syntax);
    const parsed = parseFormula(printed);
    if (parsed.problems.length > 0 || writeTree(parsed.syntax) !== writeTree(syntax))
      expect({ printed, tree: writeTree(parsed.syntax), problems: parsed.problems }).toEqual({
        printed,
        tree: writeTree(syntax),
        problems: [],
      });
  }
});

test('what is read prints as a formula that reads the same', () => {
  expect(templateFormulas.length).toBeGreaterThan(100);
  const random = randomFrom(SEED + 2);
  const grown = Array.from({ length: 1000 }, () => printPiece(grow(anyValue(random), { random, depth: 3 })));
  for (const formula of [...templateFormulas, ...grown]) {
    const { syntax } = parseFormula(formula);
    const printed = printSyntax(syntax);
    expect(writeTree(parseFormula(printed).syntax)).toBe(writeTree(syntax));
    expect(printSyntax(parseFormula(printed).syntax)).toBe(printed);
  }
});
