import fc from 'fast-check';
import { expect, test } from 'vitest';
import { element, none, together, writeMarkup } from '../../src/markup/index.ts';
import { readMarkup } from './read-markup.ts';

const SEED = 20_261_128;

test('a text is escaped, markup is not', () => {
  const bold = element('tspan', { class: 'strong' }, 'a < b');
  expect(writeMarkup(element('text', { x: 1, 'data-name': `"'&<` }, bold, ' & <c>'))).toBe(
    '<text x="1" data-name="&quot;&#39;&amp;&lt;"><tspan class="strong">a &lt; b</tspan> &amp; &lt;c&gt;</text>',
  );
});

test('what is empty closes itself, and what is undefined is left out', () => {
  expect(writeMarkup(element('path', { d: 'M0 0', class: undefined }, '', none))).toBe('<path d="M0 0"/>');
  expect(writeMarkup(together(['a', ['&']], none))).toBe('a&amp;');
});

test('characters that XML has no way to write are dropped', () => {
  expect(writeMarkup(together('a\u0000\u0007\ufffe\tb\n'))).toBe('a\tb\n');
});

test(`any text is read back as it is, wherever it stands (seed ${SEED})`, () => {
  const sign = fc.constantFrom(...`<>&;"'/=-![]x#1 `, '&lt;', '<!--', ']]>', '</g>', '\u2028', '𝛼');
  const text = fc.oneof(
    fc.string(),
    fc.array(sign).map((signs) => signs.join('')),
  );
  fc.assert(
    fc.property(text, text, (outer, inner) => {
      const clean = (words: string): string =>
        // biome-ignore lint/suspicious/noControlCharactersInRegex: XML has no way to write them
        words.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '');
      const markup = element('g', { 'data-name': outer }, outer, element('mtext', {}, inner));
      expect(readMarkup(markup)).toEqual({ words: clean(outer) + clean(inner), strange: [] });
    }),
    { seed: SEED, numRuns: 2000 },
  );
});
