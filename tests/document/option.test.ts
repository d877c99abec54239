import fc from 'fast-check';
import { expect, test } from 'vitest';
import { foldedOption } from '../../src/document/index.ts';

const SEED = 20_261_129;
console.log(`document: options start from seed ${SEED}`);

test.each([
  ['  Stiff CLAY ', 'stiff clay'],
  ['Straße', 'strasse'],
  ['STRASSE', 'strasse'],
  ['Ko\u0308nig', 'k\u00f6nig'],
  ['\u00a0API\u2009', 'api'],
  ['', ''],
])('%j is compared as %j', (option, folded) => {
  expect(foldedOption(option)).toBe(folded);
});

test('plain letters fold as any others do', () => {
  const composed = (text: string) =>
    text.normalize('NFC').toUpperCase().toLowerCase().normalize('NFC').trim();
  const texts = fc.oneof(fc.string({ unit: 'binary-ascii' }), fc.string({ unit: 'grapheme' }));
  fc.assert(
    fc.property(texts, (text) => {
      expect(foldedOption(text)).toBe(composed(text));
    }),
    { seed: SEED, numRuns: 2000 },
  );
});
