import { expect, test } from 'vitest';
import { targetsFor } from '../../../src/app/dialogs/go-to-targets.ts';
import { blankBook } from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';

const notebook = openNotebook({
  ...blankBook(),
  sheets: [
    {
      key: 'soil',
      title: 'Soil and water',
      parts: [
        { id: 'p1', kind: 'prose', role: 'heading', text: 'Loads on the water side' },
        { id: 'p2', kind: 'prose', role: 'text', text: 'water everywhere' },
        {
          id: 'p3',
          kind: 'rows',
          title: 'Unit weights',
          rows: [
            {
              id: 'r1',
              kind: 'given',
              name: 'γ_w',
              label: 'unit weight of water',
              entry: '62.4',
              unit: 'pcf',
            },
            { id: 'r2', kind: 'given', name: 'w', label: 'width', entry: '3', unit: 'ft' },
          ],
        },
      ],
    },
  ],
});
const found = (typed: string) => targetsFor(typed, notebook).map(({ name, label }) => name || label);

test('a name comes before words, a Greek letter is found by its name', () => {
  expect(found('w')[0]).toBe('w');
  expect(found('gamma')).toEqual(['γ_w']);
  expect(found('γ')).toEqual(['γ_w']);
});

test('a name is found as formulas of other sheets write it', () => {
  expect(found('soil.w')).toEqual(['w']);
  expect(found('soil.g')).toEqual(['γ_w']);
  expect(found('soil.')).toEqual(['γ_w', 'w']);
  expect(found('soil')).toEqual(['Soil and water']);
});

test('several words are found in any order, in description, name and sheet', () => {
  expect(found('weight water')).toEqual(['γ_w', 'Unit weights']);
  expect(found('water soil unit')).toEqual(['γ_w', 'Unit weights']);
  expect(found('weight nowhere')).toEqual([]);
});

test('a name is found as it is read aloud', () => {
  expect(found('γw')).toEqual(['γ_w']);
});

test('sheets, headings and titles are found by their words, other prose is not', () => {
  expect(found('water')).toEqual(['Soil and water', 'γ_w', 'Loads on the water side']);
  expect(found('unit')).toEqual(['γ_w', 'Unit weights']);
});

test('each leads to its cell, a sheet to itself', () => {
  const [sheet, name, heading] = targetsFor('water', notebook);
  expect(sheet?.place()).toBeUndefined();
  expect(name?.place()).toEqual({ sheet: 'soil', part: 'p3', item: 'r1', field: 'value' });
  expect(heading?.place()).toEqual({ sheet: 'soil', part: 'p1', item: '', field: 'text' });
});

test('nothing typed lists everything, sheets first', () => {
  expect(found('')[0]).toBe('Soil and water');
  expect(found('')).toHaveLength(15);
  expect(found('nowhere')).toEqual([]);
});

test('what is called just so comes first, whatever else has it in it', () => {
  const crowd = openNotebook({
    ...blankBook(),
    sheets: [
      {
        key: 'a',
        title: 'Energy of the ship',
        parts: [
          {
            id: 'p1',
            kind: 'rows',
            rows: [
              { id: 'r1', kind: 'given', name: 'E', label: 'Energy of one berthing', entry: '1', unit: 'kJ' },
              { id: 'r2', kind: 'given', name: 'topple', label: 'lost energy', entry: '1', unit: 'kJ' },
              { id: 'r3', kind: 'given', name: 'e', label: 'share', entry: '1', unit: '-' },
            ],
          },
          {
            id: 'p2',
            kind: 'table',
            name: 'layers',
            length: 1,
            columns: [{ id: 'c', kind: 'given', name: 'top', label: 'upper face', unit: 'm', chunks: [[1]] }],
          },
          { id: 'p3', kind: 'prose', role: 'heading', text: 'Energy' },
        ],
      },
    ],
  });
  const first = (typed: string): string | undefined => {
    const [target] = targetsFor(typed, crowd);
    return target && (target.name || target.label);
  };
  expect(first('energy')).toBe('Energy');
  expect(first('Energy')).toBe('Energy');
  expect(first('top')).toBe('layers.top');
  expect(first('e')).toBe('e');
  expect(first('E')).toBe('E');
  expect(first('lost energy')).toBe('topple');
  expect(targetsFor('energy', crowd).map(({ label }) => label)).toEqual([
    'Energy',
    'Energy of the ship',
    'Energy of one berthing',
    'lost energy',
  ]);
});

test('a page that is no sheet, or a list on it, is found by its title', () => {
  const pages = (typed: string) => targetsFor(typed, notebook).map(({ kind, overview }) => overview ?? kind);
  expect(pages('all checks')).toEqual(['checks']);
  expect(pages('Sources')).toEqual(['sources']);
  expect(pages('stated')).toEqual(['stated']);
  // The book says nothing about itself.
  expect(pages('purpose')).toEqual([]);
});
