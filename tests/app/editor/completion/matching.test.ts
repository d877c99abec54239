import { expect, test } from 'vitest';
import { matching } from '../../../../src/app/editor/completion/matching.ts';
import type { Suggestion } from '../../../../src/app/editor/completion/suggestion.ts';

const name = (text: string, rank = 0, detail = ''): Suggestion => ({ kind: 'name', text, detail, rank });
const found = (typed: string, ...all: readonly Suggestion[]) => matching(typed, all).map(({ text }) => text);

test('the same letters come before any case, a beginning before a later part, the shorter before the longer', () => {
  const all = [name('SUM'), name('layers.su'), name('su_b'), name('measure'), name('su')];
  expect(found('su', ...all)).toEqual(['su', 'su_b', 'SUM', 'layers.su', 'measure']);
});

test('rank decides among equally good matches', () => {
  expect(found('w', name('w_long', 20), name('w_b', 0), name('wide', 45))).toEqual(['wide', 'w_long', 'w_b']);
});

test('signs between the letters may be left out', () => {
  expect(found('fc', name("f'_c"), name('f_y'))).toEqual(["f'_c"]);
  expect(found('sut', name('s_ut'))).toEqual(['s_ut']);
});

test('a Greek letter is found by its name, capitals apart from small ones', () => {
  expect(found('gam', name('γ_w'), name('g'))).toEqual(['γ_w']);
  expect(found('Delta_m', name('δ_max'), name('Δ_max')).sort()).toEqual(['Δ_max', 'δ_max']);
  expect(found('a', name('γ'), name('α'))).toEqual(['α']);
  expect(found('sigma', name('absorber.σ'))).toEqual(['absorber.σ']);
});

test('Latin letters begin the names of Greek ones, and the own sheet comes before what only the key of another begins', () => {
  const other = { ...name('absorber.F', 0), sheet: 9 };
  expect(found('a', name('ABS', 10), other, name('α', 65), name('a_c', 20))).toEqual([
    'α',
    'a_c',
    'ABS',
    'absorber.F',
  ]);
  expect(found('absorber.', other, name('α', 65))).toEqual(['absorber.F']);
  expect(found('F', other, name('F_a', 20))).toEqual(['F_a', 'absorber.F']);
});

test('a word of the description is enough, of a function it is not', () => {
  expect(found('diam', name('D', 0, 'outside diameter'), name('E', 0, 'sediameter'))).toEqual(['D']);
  expect(found('sum', { ...name('TOTAL', 0, 'sum of all'), kind: 'function' })).toEqual([]);
});

test('nothing typed fits all, by rank', () => {
  expect(found('', name('b'), name('a', 5))).toEqual(['a', 'b']);
});
