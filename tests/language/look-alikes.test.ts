import { expect, test } from 'vitest';
import { parseFormula } from '../../src/language/index.ts';
import { anyValue, grow, printPiece, type Random, randomFrom } from './generate/index.ts';
import { SEED } from './seed.ts';
import { writeTree } from './tree-notation.ts';

/** What people type, and what they paste in its place. An operator stands between spaces, a unit's signs do not. */
const pasted: readonly (readonly [typed: string, ...pasted: string[]])[] = [
  [' - ', ' − ', ' – ', ' — ', ' ‑ '],
  [' * ', ' × ', ' · ', ' ⋅ ', ' ∙ ', ' ∗ '],
  [' / ', ' ÷ ', ' ∕ ', ' ⁄ '],
  [' <= ', ' ≤ '],
  [' >= ', ' ≥ '],
  [' <> ', ' ≠ '],
  ['(-', '(−', '(–'],
  ['^2', '²'],
  ['^3', '³'],
  ['·', '⋅', '∙', '•'],
  ['Δ', '∆'],
  ['; ', ';\u00a0', ';\u2009', ';\n', ' ; '],
];

function paste(formula: string, random: Random): string {
  let text = formula;
  for (const [typed, ...choices] of pasted)
    text = text
      .split(typed)
      .reduce((left, right) => left + (random.chance(0.7) ? random.pick(choices) : typed) + right);
  return text;
}

test('look-alikes read as what they look like', () => {
  const random = randomFrom(SEED + 3);
  let changed = 0;
  for (let n = 0; n < 3000; n += 1) {
    const typed = printPiece(grow(anyValue(random), { random, depth: 3 }));
    // What stands in quotation marks keeps its characters.
    if (typed.includes('"')) continue;
    const text = paste(typed, random);
    if (text !== typed) changed += 1;
    expect(readAlike(text)).toBe(readAlike(typed));
  }
  expect(changed).toBeGreaterThan(1000);
});

/** The tree with a unit's signs in one spelling. */
function readAlike(formula: string): string {
  const { syntax, problems } = parseFormula(formula);
  expect(problems).toEqual([]);
  return writeTree(syntax).replaceAll('²', '^2').replaceAll('³', '^3');
}

test.each([
  ['µ_1', 'μ_1'],
  ['Ω_m', 'Ω_m'],
  ['∆_max', 'Δ_max'],
  ['f′_c', "f'_c"],
  ['f’_c', "f'_c"],
  ['f‘_c', "f'_c"],
  ['f´_c', "f'_c"],
])('the name %s is %s', (written, name) => {
  expect(parseFormula(written)).toMatchObject({ syntax: { kind: 'name', name }, problems: [] });
});
