import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkFormula, type Type } from '../../src/language/index.ts';
import { describeDimension } from '../../src/units/index.ts';
import { fixtureScope, unitNamed } from './fixture-scope.ts';

/**
 * Fixtures: `given name: unit` and `in table` hold to the end of the file; `> formula` or `unit > formula` is checked;
 * then either `= type`, or a line `! code column-column words` for each problem, with `/ fix -> formula mended` lines.
 */
interface Fixture {
  readonly line: number;
  readonly formula: string;
  readonly unit?: string;
  readonly series: boolean;
  readonly names: Record<string, string>;
  readonly table?: string;
  readonly expected: string[];
}

function readFixtures(text: string): Fixture[] {
  const fixtures: Fixture[] = [];
  const names: Record<string, string> = {};
  let table: string | undefined;
  for (const [at, line] of text.split('\n').entries()) {
    if (line.trim() === '' || line.startsWith('#')) continue;
    const given = /^given (\S+): (.*)$/.exec(line);
    const inTable = /^in ?(\S*)$/.exec(line);
    const formula = /^(?:(series)|(\S+))? ?> (.*)$/.exec(line);
    if (given) names[`${given[1]}`] = `${given[2]}`;
    else if (inTable) table = inTable[1] || undefined;
    else if (formula)
      fixtures.push({
        line: at + 1,
        formula: `${formula[3]}`,
        ...(formula[2] !== undefined && { unit: formula[2] }),
        series: formula[1] !== undefined,
        names: { ...names },
        ...(table !== undefined && { table }),
        expected: [],
      });
    else fixtures[fixtures.length - 1]?.expected.push(line);
  }
  return fixtures;
}

function typeWords(type: Type): string {
  const axes = type.axes
    .map((axis) => ` over ${axis.fresh ? 'all of ' : ''}${axis.table.slice('sheet.'.length)}`)
    .join('');
  if (type.kind === 'number') return `${type.angle ? 'angle' : describeDimension(type.dimension)}${axes}`;
  return `${type.kind === 'point' ? type.of : type.kind}${axes}`;
}

function outcomeOf(fixture: Fixture): string[] {
  const unit = fixture.unit === undefined ? {} : { unit: unitNamed(fixture.unit) };
  const scope = fixtureScope(fixture.names, fixture.table);
  const { typed, problems } = checkFormula(fixture.formula, scope, { ...unit, series: fixture.series });
  if (problems.length === 0) return [`= ${typeWords(typed.type)}`];
  return problems.flatMap((found) => {
    const hint = found.hints.map((text) => `; ${text}`).join('');
    const fixes = found.fixes.map(
      (fix) => `/ ${fixture.formula.slice(0, fix.from)}${fix.insert}${fixture.formula.slice(fix.to)}`,
    );
    return [`! ${found.code} ${found.from}-${found.to} ${found.message}${hint}`, ...fixes];
  });
}

for (const file of readdirSync(new URL('./check/', import.meta.url))) {
  const fixtures = readFixtures(readFileSync(new URL(`./check/${file}`, import.meta.url), 'utf8'));
  describe(file, () => {
    for (const fixture of fixtures)
      test(`${fixture.line}: ${fixture.formula}`, () => {
        expect(fixture.expected, 'a fixture without an expectation').not.toEqual([]);
        expect(outcomeOf(fixture)).toEqual(fixture.expected);
      });
  });
}
