import { expect, test } from 'vitest';
import { quaybook, quaybookJson } from './run-quaybook.ts';

test('a check that fails says what it asks, by how much it fails, and what to do', () => {
  const run = quaybook('calc', 'fender-energy', '--set', 'safety=none', '--get', 'energy.c_low');
  expect(run.status).toBe(1);
  expect(run.out.split('\n')).toEqual([
    'energy.c_low                     fails  110 %',
    '  factor on the normal energy is not below 1.1: 1 ≥ 1.1 does not hold, by 0.1  [PIANC WG 33 (2002), 4.2.8]',
    expect.stringMatching(/^ {2}Fails where no allowance is made/),
    '',
  ]);
});

test('it names the rows that are counted, and the row that gives its greatest value', () => {
  const counted = quaybook('calc', 'fender-energy', '--set', 'C_S=0.09', '--get', 'data.c_b');
  expect(counted.out).toContain(
    'row 1 of data.bands (“softness factor”) is counted in “factors beyond their bands”',
  );
  const { json } = quaybookJson('calc', 'debris-haul', '--set', 'W_m=30 ST', '--get', 'haul.c_W');
  expect(json.results['haul.c_W'].says[1]).toBe('row 2 of haul.loads (“base course”) gives “heaviest load”');
});

test('a check that holds says no more than that', () => {
  const { run, json } = quaybookJson('calc', 'fender-energy', '--get', 'energy.c_low');
  expect(run.status).toBe(0);
  expect(json.results['energy.c_low'].says).toBeUndefined();
});
