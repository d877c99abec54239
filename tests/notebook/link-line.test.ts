import { describe, expect, test } from 'vitest';
import type { Outcome } from '../../src/diagnostics/index.ts';
import { type Book, blankBook, type Edit, openBook, type Row, writeBook } from '../../src/document/index.ts';
import {
  canLink,
  keepHeldEdit,
  linkEdit,
  linkedLines,
  linkTargets,
  type Notebook,
  openLinks,
  openNotebook,
  unlinkEdit,
} from '../../src/notebook/index.ts';

const lines: Readonly<Record<string, readonly Row[]>> = {
  pile: [
    {
      id: 'r1',
      kind: 'given',
      name: 'H',
      label: 'lateral load',
      entry: '10 kip',
      unit: 'kip',
      range: { max: '200 kip' },
    },
    { id: 'r2', kind: 'calc', name: 'M', formula: 'H * 3 ft', unit: 'kip-ft' },
    { id: 'r3', kind: 'given', name: 'blank', entry: '' },
    {
      id: 'r4',
      kind: 'choice',
      name: 'soil',
      entry: 'sand',
      options: [{ value: 'clay' }, { value: 'sand' }],
    },
    { id: 'r5', kind: 'given', name: 'kept', entry: '2 kip', unit: 'kip', toLink: 'R on “Fender”' },
    { id: 'r6', kind: 'given', name: 'words', entry: 'any text' },
  ],
  fender: [
    { id: 'r11', kind: 'calc', name: 'R', label: 'reaction', formula: '2 * E / 1 m', unit: 'kN' },
    { id: 'r12', kind: 'given', name: 'E', entry: '300', unit: 'kN·m' },
    { id: 'r13', kind: 'choice', name: 'ground', entry: 'clay', options: [{ value: 'clay' }] },
    { id: 'r14', kind: 'choice', name: 'rock', entry: 'chalk', options: [{ value: 'chalk' }] },
    { id: 'r15', kind: 'given', name: 'due', entry: '2026-11-25', unit: 'date' },
  ],
};

function sample(): Notebook {
  const sheets = Object.entries(lines).map(([key, rows]) => ({
    key,
    title: key,
    parts: [{ id: `p-${key}`, kind: 'rows' as const, rows }],
  }));
  return openNotebook({ ...blankBook(), sheets });
}

function apply(notebook: Notebook, edit: Outcome<Edit>): Edit {
  if (!edit.ok) throw new Error(edit.problems[0]?.message);
  const done = notebook.apply(edit.value);
  if (!done.ok) throw new Error(done.problems[0]?.message);
  return done.value.inverse;
}

const refusal = (edit: Outcome<Edit>) =>
  edit.ok ? [] : edit.problems.map(({ code, message }) => `${code}: ${message}`);
const rowNamed = ({ book }: Notebook, name: string): Row | undefined =>
  book.sheets
    .flatMap(({ parts }) => parts.flatMap((part) => (part.kind === 'rows' ? part.rows : [])))
    .find((row) => row.name === name);
const si = (notebook: Notebook, id: string) => {
  const result = notebook.result(id);
  return result.status === 'ok' && result.value.kind === 'number' ? result.value.si : result.status;
};

test('a given takes its value from a line of its dimension, and what depends on it follows', () => {
  const notebook = sample();
  const before: Book = notebook.book;
  const inverse = apply(notebook, linkEdit(notebook, 'pile.H', 'fender.R'));
  // 2 · 300 kN·m / 1 m = 600 kN, with an arm of 3 ft = 0.9144 m.
  expect(si(notebook, 'pile.H')).toBe(600e3);
  expect(si(notebook, 'pile.M')).toBeCloseTo(600e3 * 0.9144, 6);
  expect(linkedLines(notebook).map(({ item, from }) => [item.id, from.id])).toEqual([['pile.H', 'fender.R']]);
  // The limits of the given still hold: 600 kN is 134.9 kip.
  expect(notebook.problems().map(({ code }) => code)).not.toContain('out-of-range');
  const opened = openBook(writeBook(notebook.book));
  expect(opened.ok && opened.value.book).toEqual(notebook.book);
  notebook.apply(inverse);
  expect(notebook.book).toEqual(before);
});

test('a linked value beyond the limits of its given is pointed out', () => {
  const notebook = sample();
  apply(notebook, linkEdit(notebook, 'pile.H', 'fender.R'));
  notebook.apply({
    label: '',
    patches: [
      { kind: 'set', at: ['sheets', 'fender', 'parts', 'p-fender', 'rows', 'r12', 'entry'], value: '500' },
    ],
  });
  // 1000 kN is 224.8 kip.
  expect(notebook.problems().map(({ code, cell }) => `${code} ${cell}`)).toContain('out-of-range pile.H');
});

test('unlinked, it keeps the value it had, and is the given it was', () => {
  const notebook = sample();
  apply(notebook, linkEdit(notebook, 'pile.H', 'fender.R'));
  apply(notebook, unlinkEdit(notebook, 'pile.H'));
  expect(rowNamed(notebook, 'H')).toMatchObject({ kind: 'given', unit: 'kip', range: { max: '200 kip' } });
  expect(si(notebook, 'pile.H')).toBe(600e3);
  expect(rowNamed(notebook, 'H')).not.toHaveProperty('link');
  // The source that the line had was that of 10 kip.
  expect(rowNamed(notebook, 'H')).toMatchObject({
    reference: 'value of fender.R when the link was taken off',
  });
});

test('unlinked without a value, it is as it was before', () => {
  const notebook = sample();
  apply(notebook, linkEdit(notebook, 'pile.H', 'fender.R'));
  notebook.apply({ label: '', patches: [{ kind: 'remove', at: ['sheets', 'fender'] }] });
  apply(notebook, unlinkEdit(notebook, 'pile.H'));
  expect(rowNamed(notebook, 'H')).toMatchObject({ kind: 'given', entry: '10 kip' });
});

test('a link does not lie over a stated value, and is not taken off below one', () => {
  const notebook = sample();
  apply(notebook, linkEdit(notebook, 'pile.H', 'fender.R'));
  notebook.apply({
    label: '',
    patches: [
      {
        kind: 'set',
        at: ['sheets', 'pile', 'parts', 'p-pile', 'rows', 'r1', 'stated'],
        value: { entry: '5 kip', reason: 'client' },
      },
    ],
  });
  expect(refusal(unlinkEdit(notebook, 'pile.H'))).toEqual([
    'link-stated: a value is stated in place of what pile.H takes from its link',
  ]);
});

describe('what a line may be linked to', () => {
  const targets = (id: string) => linkTargets(sample(), id).map((item) => item.id);

  test.each([
    ['pile.H', ['pile.kept', 'fender.R']],
    ['pile.M', []],
    ['pile.soil', ['fender.ground']],
    ['pile.words', ['pile.soil', 'fender.ground', 'fender.rock']],
    ['fender.E', ['pile.M']],
  ])('%s', (id, found) => expect(targets(id)).toEqual(found));

  test('what is offered is what may be linked, and nothing else', () => {
    const { model } = sample();
    const lines = [...model.items.values()].filter(({ kind }) => kind === 'input' || kind === 'formula');
    let circles = 0;
    for (const { id } of lines.filter(canLink)) {
      const tried = lines.map((other) => [other.id, linkEdit(sample(), id, other.id)] as const);
      expect(targets(id)).toEqual(tried.flatMap(([other, edit]) => (edit.ok ? [other] : [])));
      for (const [, edit] of tried) if (!edit.ok && edit.problems[0]?.code === 'link-circle') circles += 1;
    }
    expect(circles).toBeGreaterThan(lines.length / 2);
  });

  test('a blank line without a unit may be anything', () => {
    const notebook = sample();
    expect(targets('pile.blank').length).toBe(10);
    apply(notebook, linkEdit(notebook, 'pile.blank', 'fender.due'));
    expect(si(notebook, 'pile.blank')).toBe(si(notebook, 'fender.due'));
    apply(notebook, unlinkEdit(notebook, 'pile.blank'));
    expect(si(notebook, 'pile.blank')).toBe(si(notebook, 'fender.due'));
  });

  test('a choice takes its option from a choice of the same options', () => {
    const notebook = sample();
    apply(notebook, linkEdit(notebook, 'pile.soil', 'fender.ground'));
    expect(notebook.result('pile.soil')).toMatchObject({ value: { text: 'clay' } });
    expect(refusal(linkEdit(notebook, 'pile.soil', 'fender.rock'))).toEqual([
      'link-kind: fender.rock is a choice with other options, where pile.soil takes a choice of the same options',
    ]);
    apply(notebook, unlinkEdit(notebook, 'pile.soil'));
    expect(rowNamed(notebook, 'soil')).toMatchObject({
      kind: 'choice',
      entry: 'clay',
      options: [{ value: 'clay' }, { value: 'sand' }],
    });
  });

  test('not to a line that takes its own value from it', () => {
    const notebook = sample();
    apply(notebook, linkEdit(notebook, 'fender.E', 'pile.M'));
    expect(refusal(linkEdit(notebook, 'pile.H', 'fender.R'))).toEqual([
      'link-circle: fender.R takes its own value from pile.H (fender.R, fender.E, pile.M, pile.H)',
    ]);
    expect(refusal(linkEdit(notebook, 'pile.M', 'fender.R'))).toEqual([
      'link-unfit: pile.M cannot take its value from fender.R',
    ]);
  });
});

test('what is to be linked is so no more once it is linked, or kept as it is', () => {
  const notebook = sample();
  const open = () => openLinks(notebook).map(({ item }) => item.id);
  expect(open()).toEqual(['pile.kept']);
  const inverse = apply(notebook, linkEdit(notebook, 'pile.kept', 'fender.R'));
  expect(open()).toEqual([]);
  notebook.apply(inverse);
  expect(open()).toEqual(['pile.kept']);
  const keep = keepHeldEdit(notebook, 'pile.kept');
  expect(keep && notebook.apply(keep).ok).toBe(true);
  expect(open()).toEqual([]);
  expect(si(notebook, 'pile.kept')).toBe(2 * 4448.2216152605);
});

test('a given that has its unit from its entry alone is shown in it when it is linked', () => {
  const notebook = openNotebook({
    ...blankBook(),
    sheets: [
      {
        key: 's',
        title: 'S',
        parts: [
          {
            id: 'p',
            kind: 'rows',
            rows: [
              { id: 'r1', kind: 'given', name: 'mine', entry: '12 kip' },
              { id: 'r2', kind: 'given', name: 'theirs', entry: '100 kN', unit: 'kN' },
              { id: 'r3', kind: 'given', name: 'plain', entry: '12' },
              { id: 'r4', kind: 'given', name: 'count', entry: '5' },
            ],
          },
        ],
      },
    ],
  });
  apply(notebook, linkEdit(notebook, 's.mine', 's.theirs'));
  expect(rowNamed(notebook, 'mine')).toMatchObject({ kind: 'calc', formula: 'theirs', unit: 'kip' });
  const read = notebook.result('s.mine');
  expect(read.status === 'ok' && read.value.kind === 'number' && read.value.unit.text).toBe('kip');
  apply(notebook, linkEdit(notebook, 's.plain', 's.count'));
  expect(rowNamed(notebook, 'plain')).not.toHaveProperty('unit');
});
