import { expect, test } from 'vitest';
import { catalogueAreas } from '../../src/diagnostics/index.ts';
import { extendUnits, readEntry, readUnit, standardUnits } from '../../src/units/index.ts';
import { BAD_EXTENSIONS } from './bad-extensions.ts';
import { fixtureFile, readFixtures } from './fixture.ts';

/** Every outcome the fixtures of this folder give. */
function outcomes() {
  const entries = readFixtures('entries').map(({ columns: [text = '', row = ''] }) => {
    const unit = row === '' ? undefined : readUnit(row, standardUnits);
    return readEntry(text, standardUnits, unit?.ok ? unit.value : undefined);
  });
  const units = fixtureFile('unit-texts/refused.txt').map(({ columns: [text = ''] }) =>
    readUnit(text, standardUnits),
  );
  const extensions = BAD_EXTENSIONS.map(({ extension }) => extendUnits(standardUnits, extension));
  const long = [readUnit('m·'.repeat(100), standardUnits), readEntry('1'.repeat(300), standardUnits)];
  return [...entries, ...units, ...extensions, ...long];
}

test('every code of quantities is provoked by a fixture', () => {
  const provoked = new Set(
    outcomes().flatMap((outcome) => (outcome.ok ? [] : outcome.problems.map((p) => String(p.code)))),
  );
  expect(Object.keys(catalogueAreas.quantity).filter((code) => !provoked.has(code))).toEqual([]);
});
