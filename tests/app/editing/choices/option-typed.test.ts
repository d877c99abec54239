import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type ChoiceOption,
  isOneMeant,
  optionTyped,
} from '../../../../src/app/editing/choices/choice-options.ts';

const soils = [
  'very loose sand',
  'loose sand',
  'medium sand-silt',
  'medium silt',
  'medium sand',
  'dense silt',
  'very dense sand-silt',
  'dense sand-silt',
  'dense sand',
  'very dense sand',
].map((value): ChoiceOption => ({ value }));
const rules: readonly ChoiceOption[] = [
  { value: 'linear 25-70', label: 'falls between 25 and 70 kPa, USACE chart' },
  { value: 'USACE', label: 'USACE: by strength over depth' },
  { value: 'β entered', label: 'β entered for each sand layer, f stated nowhere' },
  { value: 'f stated', label: 'unit friction entered' },
  { value: '', label: 'blank' },
];
const value = (options: readonly ChoiceOption[], typed: string, now = -1) => {
  const at = optionTyped(options, typed, now);
  return at === undefined ? undefined : options[at]?.value;
};

describe('what is typed into a choice', () => {
  test.each([
    ['dense sand-silt', 'dense sand-silt'],
    ['dense sand', 'dense sand'],
    ['Dense Sand ', 'dense sand'],
    ['medium sand', 'medium sand'],
    ['medium san', 'medium sand-silt'],
    ['very d', 'very dense sand-silt'],
    // Begun so comes before what has it within.
    ['d', 'dense silt'],
    ['sand-silt', 'medium sand-silt'],
    ['rubbish', undefined],
    ['medium sands', undefined],
    ['', undefined],
  ])('“%s” leads to %s, wherever the list stands', (typed, found) => {
    for (const now of [-1, 0, 4, 9]) expect(value(soils, typed, now)).toBe(found);
  });

  test.each([
    ['USACE', 'USACE'],
    ['usace: by', 'USACE'],
    ['f stated', 'f stated'],
    ['linear', 'linear 25-70'],
    ['falls', 'linear 25-70'],
    ['blank', ''],
  ])('“%s” may be the value or the words: %s', (typed, found) => {
    expect(value(rules, typed)).toBe(found);
  });

  test('the option that the cell holds is meant as long as what is typed begins it', () => {
    const held = soils.findIndex((one) => one.value === 'dense sand');
    const to = (typed: string) => soils[optionTyped(soils, typed, held, held) ?? -1]?.value;
    expect(['den', 'dense', 'dense s', 'dense sand', 'dense sand-'].map(to)).toEqual([
      'dense sand',
      'dense sand',
      'dense sand',
      'dense sand',
      'dense sand-silt',
    ]);
  });

  test.each([
    ['medium', false],
    ['medium si', true],
    ['medium sand', true],
    ['sand-silt', false],
    ['loose', true],
    ['l', true],
    ['d', false],
    ['ry l', true],
    ['rubbish', false],
  ])('“%s” can only be one: %s', (typed, isOne) => {
    expect(isOneMeant(soils, typed)).toBe(isOne);
  });

  test('one letter again and again goes from option to option', () => {
    const all: (string | undefined)[] = [];
    let now = -1;
    for (const typed of ['m', 'mm', 'mmm', 'mmmm']) {
      now = optionTyped(soils, typed, now) ?? -9;
      all.push(soils[now]?.value);
    }
    expect(all).toEqual(['medium sand-silt', 'medium silt', 'medium sand', 'medium sand-silt']);
  });

  test('an option typed whole is that option, whatever the list and wherever it stands', () => {
    const lists = fc.uniqueArray(fc.stringMatching(/^[ab][ab -]{0,5}[ab]$/), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(lists, fc.nat(), fc.integer({ min: -1, max: 11 }), (names, which, now) => {
        const options = names.map((name) => ({ value: name }));
        const wanted = names[which % names.length] ?? '';
        fc.pre(!/^(.)\1*$/.test(wanted));
        expect(value(options, wanted, Math.min(now, names.length - 1))).toBe(wanted);
      }),
    );
  });

  test('what leads to an option stands in it', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[a-z -]{1,6}$/), (typed) => {
        const found = value(soils, typed);
        const isRepeated = /^(.)\1*$/.test(typed.trimStart());
        if (found !== undefined && !isRepeated)
          expect(found.startsWith(typed.trim()) || found.includes(typed.trimStart().trimEnd())).toBe(true);
      }),
    );
  });
});
