import { expect, test } from 'vitest';
import { setEntry } from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { failsBy, shownSides } from '../../../src/record/values/compared-sides.ts';
import { smallBook } from '../../app/small-book.ts';
import { blockOf, bookOf, given } from '../../make-book.ts';

test('a failing check tells how far it is from holding', () => {
  const notebook = openNotebook(smallBook());
  const by = (view: 'written' | 'US'): string | undefined => {
    const verdict = notebook.verdict('beam.c_M');
    return verdict && failsBy(verdict, view, notebook.model.registry);
  };
  // 10 × 4² / 8 = 20, and 10 × 6² / 8 = 45, of 25 kN·m; a kip·ft is 4.4482216 kN × 0.3048 m.
  expect(by('written')).toBeUndefined();
  const edit = setEntry({ sheet: 'beam', part: 'p2', row: 'r1' }, '6 m');
  expect(notebook.apply(edit).ok).toBe(true);
  expect(by('written')).toBe('20\u00a0kN·m');
  expect(by('US')).toBe('14.75\u00a0kip·ft');
});

test.each([
  ['345.678', '345.671', '345.68', '345.67'],
  ['345.671', '345.678', '345.67', '345.68'],
  ['345.678', '346', '345.7', '346'],
  ['100.0000001', '100', '100.0000001', '100'],
  // What comparison takes for the same reads the same.
  ['0.3', '0.30000000000000004', '0.3', '0.3'],
  ['12345.6', '12345.7', '12\u202f345.6', '12\u202f345.7'],
])('a check of %s against %s shows %s and %s', (demand, capacity, left, right) => {
  const check = { id: 'c', kind: 'check', name: 'c', formula: 'a <= b' } as const;
  const notebook = openNotebook(
    bookOf({ s: [blockOf('b', given('a', demand, 'kN'), given('b', capacity, 'kN'), check)] }),
  );
  const verdict = notebook.verdict('s.c');
  expect(verdict && shownSides(verdict, 'written', notebook.model.registry)).toEqual({
    demand: `${left}\u00a0kN`,
    capacity: `${right}\u00a0kN`,
  });
});
