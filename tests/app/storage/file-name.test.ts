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
});
