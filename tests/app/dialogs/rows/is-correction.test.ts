import { describe, expect, test } from 'vitest';
import { isCorrection } from '../../../../src/app/dialogs/rows/is-correction.ts';

const text = 'divers,6,1850\nhoarding,420,32..5\n';

describe('the same text is', () => {
  test.each([
    ['one with a cell corrected', text, text.replace('32..5', '32.5')],
    ['one with a row added', text, `${text}lights,10,75\n`],
    ['one with a row taken out', `${text}lights,10,75\n`, text],
    ['one with other headings', 'Item;Menge\nslab;1,5\n', 'Bauteil;Volumen (m3)\nslab;1,5\n'],
    ['a row that is begun', 'item,V_s\n', 'item,V_s\ns'],
    ['one key typed', '5', '57'],
    ['one key typed over', '5', '6'],
  ])('%s', (_, before, after) => {
    expect(isCorrection(before, after)).toBe(true);
  });
});

describe('another text is', () => {
  test.each([
    ['one with all cells elsewhere', text, '6,divers,1850\n420,hoarding,32.5\n'],
    ['none', text, ''],
    ['the first one', '', text],
    [
      'one of other rows under long headings',
      'description of the item;volume\nslab;1,5\n',
      'description of the item;volume\ncaps;1.500\n',
    ],
    ['one with most of it added', 'aaaa', 'aaaaaaaaa'],
    ['one with other rows', 'item;V_s\nslab;1,5\ncaps;2,75\n', 'item;V_s\npiles;1.500\nwall;2.250\n'],
  ])('%s', (_, before, after) => {
    expect(isCorrection(before, after)).toBe(false);
  });
});

test('equal ends are not counted twice', () => {
  expect(isCorrection('aaaa', 'aaaaaaaaa')).toBe(false);
  expect(isCorrection('aaaa', 'aaaaaaaa')).toBe(true);
});
