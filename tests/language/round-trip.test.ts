import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseFormula, printSyntax } from '../../src/language/index.ts';
import { anySyntax } from './arbitrary-syntax.ts';
import { anyValue, grow, printPiece, randomFrom } from './generate/index.ts';
import { SEED } from './seed.ts';
import { templateFormulas } from './template-formulas.ts';
import { writeTree } from './tree-notation.ts';

test('what is printed reads as the same tree, without a problem', () => {
  const print = fc.property(anySyntax, (syntax) => {
    const parsed = parseFormula(printSyntax(syntax));
    expect(parsed.problems).toEqual([]);
    expect(writeTree(parsed.syntax)).toBe(writeTree(syntax));
  });
  fc.assert(print, { seed: SEED, numRuns: 3000 });
});

test('what is read prints as a formula that reads the same', () => {
  const random = randomFrom(SEED + 2);
  const grown = Array.from({ length: 1000 }, () => printPiece(grow(anyValue(random), { random, depth: 3 })));
  for (const formula of [...templateFormulas, ...grown]) {
    const { syntax } = parseFormula(formula);
    const printed = printSyntax(syntax);
    expect(writeTree(parseFormula(printed).syntax)).toBe(writeTree(syntax));
    expect(printSyntax(parseFormula(printed).syntax)).toBe(printed);
  }
});
