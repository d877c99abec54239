import { expect, test } from 'vitest';
import { FACTORS } from '../../src/recheck/factors.ts';
import { factorsSource } from './ucum-factors.ts';

test('the table of factors is what UCUM gives today', async () => {
  await expect(factorsSource()).toMatchFileSnapshot('../../src/recheck/factors.ts');
});
