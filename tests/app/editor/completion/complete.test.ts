import { describe, expect, test } from 'vitest';
import { complete } from '../../../../src/app/editor/completion/complete.ts';
import { completingAt } from '../../../../src/app/editor/completion/completing-at.ts';
import type { Suggestion } from '../../../../src/app/editor/completion/suggestion.ts';
import { itemOfPlace } from '../../../../src/app/editor/readers/place-item.ts';
import type { CellPlace } from '../../../../src/app/view-model/place.ts';
import { lineOf, sessionOn } from './sample-session.ts';

const column = (item: string): CellPlace => ({ sheet: 'pier', part: 't', item, field: 'value' });

/** What is offered where `|` stands, best first. */
function offered(place: CellPlace, text: string, asked = true): readonly Suggestion[] {
  const session = sessionOn();
  const item = itemOfPlace(session.notebook, place);
  if (item?.kind !== 'formula' && item?.kind !== 'formula column') throw new Error('no formula there');
  const found = complete(session, item, text.replace('|', ''), text.indexOf('|'), asked);
  return [...(found?.suggestions ?? [])].sort((a, b) => b.rank - a.rank);
}
const texts = (found: readonly Suggestion[]) => found.map(({ text }) => text);
const names = (found: readonly Suggestion[]) => texts(found.filter(({ kind }) => kind === 'name'));

describe('what is being written', () => {
  test.each([
    ['a + b|', { kind: 'name', from: 4 }],
    ['a + |', { kind: 'name', from: 4 }],
    ['layers.th|', { kind: 'name', from: 0 }],
    ["f'_c|", { kind: 'name', from: 0 }],
    ['a + 12 |', { kind: 'unit', from: 7, number: 4, inside: false }],
    ['a + 12.5 kN|', { kind: 'unit', from: 9, number: 4, inside: false }],
    ['3 (kN/m|', { kind: 'unit', from: 6, number: 0, inside: true }],
    ['2 * (a|', { kind: 'name', from: 5 }],
    ['t_1 |', { kind: 'name', from: 4 }],
    ['IF(soil = "cl|', { kind: 'text', from: 11 }],
    ['"a" & b|', { kind: 'name', from: 6 }],
  ])('%s', (text, what) => {
    expect(completingAt(text.replace('|', ''), text.indexOf('|'))).toEqual(what);
  });
});

describe('names', () => {
  test('come with description and value', () => {
    const b = offered(lineOf('W'), 'b|').find(({ text }) => text === 'b');
    expect(b).toMatchObject({ detail: 'berth length' });
    expect(b?.value?.()).toBe('120\u00a0ft');
  });

  test('stand with the sheet first, and other sheets by their prefix', () => {
    const found = names(offered(lineOf('c'), '|'));
    expect(found.indexOf('q')).toBeLessThan(found.indexOf('basis.P'));
    expect(found).toContain('layers.h');
    expect(found).not.toContain('h');
  });

  test('stand with the columns of the own table first, as this row and whole', () => {
    const found = names(offered(column('tf'), '2 * |'));
    expect(found.slice(0, 3).sort()).toEqual(['bottom', 'h', 'soil']);
    expect(found).toContain('layers.h');
  });

  test('a line is not offered itself; a column is, last of its table', () => {
    expect(names(offered(lineOf('W'), '|'))).not.toContain('W');
    expect(names(offered(column('tb'), '|'))).toContain('bottom');
  });

  test('of the dimension of the unit column come first', () => {
    expect(names(offered(lineOf('W'), '|'))[0]).toBe('F');
  });

  test('of the dimension of the other side come first', () => {
    expect(names(offered(lineOf('W'), 'b + |'))[0]).toBe('b');
    expect(
      names(offered(lineOf('c'), 'W <= |'))
        .slice(0, 2)
        .sort(),
    ).toEqual(['F', 'W']);
    expect(names(offered(lineOf('c'), 'MAX(w * 2; q - |')).at(0)).toBe('q');
  });

  test('are offered unasked only once a letter is there', () => {
    expect(offered(lineOf('W'), 'b + |', false)).toEqual([]);
    expect(names(offered(lineOf('W'), 'b + w|', false))).toContain('w');
  });
});

test('functions come with signature and help, and leave the caret between the parentheses', () => {
  const found = offered(lineOf('W'), 'SU|').find(({ text }) => text === 'SUM');
  expect(found).toMatchObject({ kind: 'function', insert: 'SUM()', back: 1 });
  expect(found?.signature).toMatch(/^SUM\(/);
  expect(found?.help).not.toBe('');
});

describe('units', () => {
  test.each([
    'W + |',
    'IF(W < 4 kip; W; 2 * W) + |',
    'IF(method = "a < b"; W; W) + |',
    'IF(W < 4 kip; W; 2 * W) <= |',
  ])('of the dimension on the other side come first: %s', (text) => {
    expect(
      names(offered(lineOf('c'), text))
        .slice(0, 2)
        .sort(),
    ).toEqual(['F', 'W']);
  });

  test('of the wanted dimension come first, all others after', () => {
    const found = texts(offered(lineOf('W'), 'b + 12 |'));
    expect(found.slice(0, 2)).toEqual(['ft', 'm']);
    expect(found).toContain('kN');
    expect(found.at(-1)).toMatch(/^[A-Z]{3}$/);
  });

  test('that are compounds are written in parentheses', () => {
    const found = offered(lineOf('W'), 'w + 3 |').find(({ text }) => text === 'kN/m');
    expect(found).toMatchObject({ insert: '(kN/m)', detail: 'a force per length' });
  });

  test('are single symbols within parentheses', () => {
    expect(offered(lineOf('W'), '3 (kN/|').every(({ insert }) => insert === undefined)).toBe(true);
  });
});

describe('texts', () => {
  test('of a choice and of a column of texts', () => {
    expect(texts(offered(lineOf('W'), 'IF(method = "|'))).toEqual(['API', 'measured']);
    expect(texts(offered(column('tf'), 'IF(soil = "s|"; 1; 2)'))).toEqual(['clay', 'sand']);
    expect(texts(offered(lineOf('W'), 'SWITCH(top_soil; "clay"; 1; "|'))).toEqual(['clay', 'sand']);
  });

  test('that a function takes as options', () => {
    expect(texts(offered(lineOf('W'), 'MATCH(b; layers.h; "|'))).toEqual([
      'exact',
      'first',
      'at or below',
      'at or above',
    ]);
  });
});
