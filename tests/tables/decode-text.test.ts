import { expect, test } from 'vitest';
import { type Decode, decodeText } from '../../src/tables/index.ts';

const decode: Decode = (encoding, bytes) => new TextDecoder(encoding, { fatal: true }).decode(bytes);

/** The characters of Windows-1252 that Latin-1 has not (WHATWG Encoding, index windows-1252): byte, code point. */
const CHARACTERS: readonly (readonly [byte: number, codePoint: number])[] = [
  [0x80, 0x20ac],
  [0x82, 0x201a],
  [0x83, 0x0192],
  [0x84, 0x201e],
  [0x85, 0x2026],
  [0x86, 0x2020],
  [0x87, 0x2021],
  [0x88, 0x02c6],
  [0x89, 0x2030],
  [0x8a, 0x0160],
  [0x8b, 0x2039],
  [0x8c, 0x0152],
  [0x8e, 0x017d],
  [0x91, 0x2018],
  [0x92, 0x2019],
  [0x93, 0x201c],
  [0x94, 0x201d],
  [0x95, 0x2022],
  [0x96, 0x2013],
  [0x97, 0x2014],
  [0x98, 0x02dc],
  [0x99, 0x2122],
  [0x9a, 0x0161],
  [0x9b, 0x203a],
  [0x9c, 0x0153],
  [0x9e, 0x017e],
  [0x9f, 0x0178],
];

test('Windows-1252 has 27 characters that Latin-1 has not', () => {
  expect(CHARACTERS).toHaveLength(27);
});

test.each(CHARACTERS)('the byte %i is the character %i', (byte, codePoint) => {
  const decoded = decodeText(new Uint8Array([0x61, byte, 0x62]), decode);
  expect(decoded).toMatchObject({
    encoding: 'windows-1252',
    text: `a${String.fromCodePoint(codePoint)}b`,
    problems: [{ code: 'table-encoding-guessed' }],
  });
});

test('from 0xA0 on Windows-1252 is Latin-1, and below 0x80 ASCII', () => {
  const bytes = [...Array(0x80).keys()].slice(1).concat([...Array(0x60).keys()].map((at) => at + 0xa0));
  const decoded = decodeText(new Uint8Array(bytes), decode);
  expect(decoded?.encoding).toBe('windows-1252');
  expect(decoded?.text).toBe(String.fromCodePoint(...bytes));
});

test('of UTF-8 and UTF-16 nothing is said, and a mark is no part of the text', () => {
  const bytes = new TextEncoder().encode('\ufeffm³ – €');
  expect(decodeText(bytes, decode)).toEqual({ text: 'm³ – €', encoding: 'utf-8', problems: [] });
  const wide = new Uint8Array([0xff, 0xfe, 0x41, 0, 0x13, 0x20]);
  expect(decodeText(wide, decode)).toEqual({ text: 'A–', encoding: 'utf-16le', problems: [] });
});

test('half a character of UTF-16 is no text', () => {
  expect(decodeText(new Uint8Array([0xff, 0xfe, 0x41, 0, 0x00, 0xd8]), decode)).toBeUndefined();
});
