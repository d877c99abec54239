import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parseFormula } from '../../src/language/index.ts';
import { writeTree } from './tree-notation.ts';

/**
 * Fixtures: `# name`, the formula on the line below, `=> tree`, and a line `! code from-to` for each problem. The
 * formula stands as typed to the end of its line.
 */
interface Fixture {
  readonly name: string;
  readonly formula: string;
  readonly expected: readonly string[];
}

function readFixtures(text: string): readonly Fixture[] {
  return text
    .split(/^# /m)
    .slice(1)
    .map((block) => {
      const [name = '', formula = '', ...expected] = block.split('\n');
      return { name, formula, expected: expected.filter((line) => line.trim() !== '') };
    });
}

for (const file of readdirSync(new URL('./parse/', import.meta.url)))
  describe(file, () => {
    for (const { name, formula, expected } of readFixtures(
      readFileSync(new URL(`./parse/${file}`, import.meta.url), 'utf8'),
    ))
      test(`${name}: ${formula}`, () => {
        expect(expected, 'a fixture without an expectation').not.toEqual([]);
        const { syntax, problems } = parseFormula(formula);
        const found = problems.map(({ code, from, to }) => `! ${code} ${from}-${to}`);
        expect([`=> ${writeTree(syntax)}`, ...found]).toEqual(expected);
      });
  });
