import fc from 'fast-check';
import { expect, test } from 'vitest';
import { printJson } from '../../src/cli/print-json.ts';

const SEED = 20_261_130;
console.log(`print-json: seed ${SEED}`);

const value = fc.dictionary(fc.string(), fc.jsonValue({ maxDepth: 2 }), { noNullPrototype: true });

function printed(results: Record<string, object>, rest: Record<string, unknown>): readonly string[] {
  const lines: string[] = [];
  const take = (text: string): void => {
    lines.push(text);
  };
  printJson({ results: Object.entries(results) }, rest, { print: take, complain: take });
  return lines;
}

test('an object printed entry by entry is the text of JSON.stringify', () => {
  fc.assert(
    fc.property(fc.dictionary(fc.string(), value, { noNullPrototype: true }), value, (results, others) => {
      // Whole numbers as keys would come first.
      const rest = Object.fromEntries(Object.entries(others).map(([key, of]) => [`k${key}`, of]));
      expect(printed(results, rest).join('\n')).toBe(JSON.stringify({ results, ...rest }, null, 2));
    }),
    { seed: SEED, numRuns: 300 },
  );
});

test('an entry is printed as soon as the next is made, so that no more than two are held', () => {
  const order: string[] = [];
  const entries = function* (): Iterable<readonly [string, object]> {
    for (const name of ['a', 'b', 'c']) {
      order.push(`make ${name}`);
      yield [name, { name }];
    }
  };
  const print = (text: string): void => {
    const name = /"name": "(.)"/.exec(text)?.[1];
    if (name !== undefined) order.push(`print ${name}`);
  };
  printJson({ results: entries() }, {}, { print, complain: print });
  expect(order).toEqual(['make a', 'make b', 'print a', 'make c', 'print b', 'print c']);
});
