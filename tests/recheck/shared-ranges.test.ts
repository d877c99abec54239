import { expect, test } from 'vitest';
import { sharedRanges } from '../../src/recheck/shared-ranges.ts';

const sheet = (...formulas: readonly string[]) => ({
  name: 'Table1',
  rows: formulas.map((formula) => [1, formula]),
});

test('long ranges that several formulas read are named first, without their last row', () => {
  const long = 'Table1!$B$2:$B$900';
  const block = 'Search!$B$1:$G$100';
  const { rows } = sharedRanges([
    sheet(`=SUM(${long})`, `=IF(A1,SUM(${long}),MATCH(2,${long}))`, `=VLOOKUP(1,${block},2)`),
    sheet(
      `=VLOOKUP(2,${block},2)`,
      '=SUM(Table1!$C$2:$C$900)',
      '=SUM(Table1!$D$2:$D$9)+SUM(Table1!$D$2:$D$9)',
    ),
  ]);
  expect(rows).toEqual([['=SUM(Table1!$B$2:$B$899)'], ['=SUM(Search!$B$1:$G$99)']]);
});
