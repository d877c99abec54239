import { describe, expect, test } from 'vitest';
import { checkFormula } from '../../src/language/index.ts';
import { readProjectFile } from '../architecture/project-files.ts';
import { fixtureScope } from './fixture-scope.ts';

/** The rows of the page's table of what is refused, with the readings it says are offered. */
const rows = readProjectFile('docs/language.md')
  .split('\n')
  .filter((line) => line.startsWith('| `'))
  .map((line) => [...line.matchAll(/`([^`]+)`/g)].map(([, cell = '']) => cell));

const scope = fixtureScope({ a: 'plain', b: 'plain', c: 'plain', x: 'plain', s: 'plain', m: 'plain' });

describe('the reference page tells of readings as they are offered', () => {
  test('it tells of some', () => expect(rows.length).toBeGreaterThan(10));
  test.each(rows)('%s', (formula = '', ...readings) => {
    const { problems } = checkFormula(formula, scope);
    const offered = problems.flatMap(({ fixes }) =>
      fixes.map(({ from, to, insert }) => formula.slice(0, from) + insert + formula.slice(to)),
    );
    expect(offered).toEqual(readings.filter((reading) => reading !== undefined));
  });
});
