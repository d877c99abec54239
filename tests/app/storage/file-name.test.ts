import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fileNameOf } from '../../../src/app/storage/file-name.ts';

const bytes = (text: string): number => new TextEncoder().encode(text).length;

describe('file names', () => {
  test('keep letters and digits of any language, joined by hyphens', () => {
    expect(fileNameOf('Berth 7 / crane “B”', '.quaybook.json')).toBe('berth-7-crane-b.quaybook.json');
    expect(fileNameOf('岸壁 3', '.csv')).toBe('岸壁-3.csv');
  });

  test('are book where no word is left', () => {
    expect(fileNameOf(' … ', '.quaybook.json')).toBe('book.quaybook.json');
  });

  test.each([['a'], ['ü'], ['岸'], ['𝒜']])('are never longer than every system takes: of %s', (letter) => {
    const name = fileNameOf(letter.repeat(500), '.quaybook.json');
    expect(bytes(name)).toBeLessThanOrEqual(200);
    expect(bytes(name)).toBeGreaterThan(190);
    expect(name.endsWith('.quaybook.json')).toBe(true);
    expect(name.isWellFormed?.() ?? true).toBe(true);
  });

  test.each([['con'], ['AUX'], ['lpt1']])('are not that of a device: %s', (word) => {
    expect(fileNameOf(word, '.csv')).toBe(`${word.toLowerCase()}-book.csv`);
  });

  test('keep the marks of letters that are written with them, and no mark alone', () => {
    expect(fileNameOf('की ि', '.csv')).toBe('की.csv');
    expect(fileNameOf('a\u0308 \u2693\ufe0f', '.csv')).toBe('ä.csv');
  });

  const seed = 20_260_731;
  test(`have every letter and digit of the words, in their order, and nothing else (seed ${seed})`, () => {
    const piece = fc.constantFrom(
      'Kran',
      'ÖL',
      '岸壁',
      '7',
      'की',
      ' ',
      '/',
      '\\',
      ':',
      '..',
      '“x”',
      '\u0000',
      '=',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
        const stem = fileNameOf(pieces.join(''), '.csv').slice(0, -'.csv'.length);
        const kept = pieces
          .join('')
          .toLowerCase()
          .replaceAll('\u0000', '')
          .replace(/[ /\\:.“”=]/g, '');
        expect(stem.replaceAll('-', '')).toBe(kept === '' ? 'book' : kept);
        expect(stem).not.toMatch(/^-|-$|--/);
      }),
      { seed, numRuns: 300 },
    );
  });
});
