import { expect, test } from 'vitest';
import { failsBy } from '../../../src/app/view-model/compared-sides.ts';
import { setEntry } from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { smallBook } from '../small-book.ts';

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
