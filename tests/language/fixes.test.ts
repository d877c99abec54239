import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkFormula, type Scope } from '../../src/language/index.ts';
import { fixtureScope } from './fixture-scope.ts';
import { anyValue, breakAnywhere, grow, printPiece, randomFrom, worldScope } from './generate/index.ts';
import { SEED } from './seed.ts';

/** How many problems a formula has, by what is said; mending one may bring up the next of its kind. */
function tally(formula: string, scope: Scope): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { message } of checkFormula(formula, scope).problems)
    counts.set(message, (counts.get(message) ?? 0) + 1);
  return counts;
}

/** The remedies that leave the problem they are offered for where it was; how many were tried. */
function idleFixes(
  formula: string,
  scope: Scope,
): { readonly tried: number; readonly idle: readonly string[] } {
  const before = tally(formula, scope);
  const fixes = checkFormula(formula, scope).problems.flatMap(({ message, fixes }) =>
    fixes.map((fix) => ({ message, fix })),
  );
  const idle = fixes.flatMap(({ message, fix }) => {
    const mended = formula.slice(0, fix.from) + fix.insert + formula.slice(fix.to);
    const after = tally(mended, scope).get(message) ?? 0;
    return after < (before.get(message) ?? 0) ? [] : [`${formula} -> ${mended}: still ${message}`];
  });
  return { tried: fixes.length, idle };
}

test('every remedy of a fixture takes its problem away', () => {
  const names: Record<string, string> = {};
  const formulas: string[] = [];
  for (const file of readdirSync(new URL('./check/', import.meta.url)))
    for (const line of readFileSync(new URL(`./check/${file}`, import.meta.url), 'utf8').split('\n')) {
      const [, name, unit] = /^given (\S+): (.*)$/.exec(line) ?? [];
      if (name !== undefined && unit !== undefined) names[name] = unit;
      const [, formula] = /^(?:\S+ )?> (.*)$/.exec(line) ?? [];
      if (formula !== undefined) formulas.push(formula);
    }
  const results = formulas.map((formula) => idleFixes(formula, fixtureScope(names)));
  expect(results.flatMap(({ idle }) => idle)).toEqual([]);
  expect(results.reduce((sum, { tried }) => sum + tried, 0)).toBeGreaterThan(80);
});

test('every remedy offered for a random slip takes it away', () => {
  const random = randomFrom(SEED + 8);
  const scope = worldScope();
  let tried = 0;
  const idle: string[] = [];
  for (let n = 0; n < 3000; n += 1) {
    const growth = { random, depth: 3 };
    const broken = breakAnywhere(grow(anyValue(random), growth), growth);
    if (!broken) continue;
    const result = idleFixes(printPiece(broken.piece), scope);
    tried += result.tried;
    idle.push(...result.idle);
  }
  expect(idle).toEqual([]);
  expect(tried).toBeGreaterThan(100);
});
