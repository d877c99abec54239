import { expect, test } from 'vitest';
import { huntCommandLine } from './command-line.ts';

const SEED = 20_261_131;
console.log(`hostile inputs through the command line start from seed ${SEED}`);

test('no hostile text makes the command line throw, say what is not so of it, or change a prototype', async () => {
  const harms = await huntCommandLine(300, SEED);
  // How long it is busy is measured by `npm run hostile` alone: here other tests run beside it.
  expect(harms.filter(({ harm }) => !harm.startsWith('busy'))).toEqual([]);
});
