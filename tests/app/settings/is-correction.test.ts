import { expect, test } from 'vitest';
import { isCorrection } from '../../../src/app/settings/is-correction.ts';

const text = 'divers,6,1850\nhoarding,420,32..5\n';

test('a cell corrected, a row taken out or added is the same text', () => {
  expect(isCorrection(text, text.replace('32..5', '32.5'))).toBe(true);
  expect(isCorrection(text, `${text}lights,10,75\n`)).toBe(true);
  expect(isCorrection(`${text}lights,10,75\n`, text)).toBe(true);
});

test('a text pasted over all of it, or over nothing, is another one', () => {
  expect(isCorrection(text, '6,divers,1850\n420,hoarding,32.5\n')).toBe(false);
  expect(isCorrection(text, '')).toBe(false);
  expect(isCorrection('', text)).toBe(false);
});

test('equal ends are not counted twice', () => {
  expect(isCorrection('aaaa', 'aaaaaaaaa')).toBe(false);
  expect(isCorrection('aaaa', 'aaaaaaaa')).toBe(true);
});
