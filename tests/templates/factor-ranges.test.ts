import { expect, test } from 'vitest';
import { templateBook } from '../../src/cli/books.ts';
import { openNotebook } from '../../src/notebook/index.ts';

/** Factors on resistance by which a check may be made to hold. */
const FACTOR = /factor of safety|resistance factor|partial factor/;
/** What a line or a ship comes to, and nobody enters. */
const IS_RESULT = /^least |^factor of safety$/;

test.each(['bollard-pull', 'pile-bearing'])(
  'each factor of safety or resistance of %s has both limits, entered or stated',
  (id) => {
    const rows = [...openNotebook(templateBook(id)).model.items.values()].flatMap((item) =>
      (item.kind === 'input' || item.kind === 'formula') && item.row.kind !== 'check' ? [item.row] : [],
    );
    const factors = rows.filter(
      ({ label = '', ...row }) => 'range' in row && FACTOR.test(label) && !IS_RESULT.test(label),
    );
    expect(factors.length).toBeGreaterThan(3);
    const open = factors.filter((row) => {
      const { min, max } = ('range' in row && row.range) || {};
      return min === undefined || max === undefined;
    });
    expect(open.map(({ name }) => name)).toEqual([]);
  },
);
