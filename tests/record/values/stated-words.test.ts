import { expect, test } from 'vitest';
import { type Book, blankBook } from '../../../src/document/index.ts';
import { openNotebook, statedIn } from '../../../src/notebook/index.ts';
import { statedWords } from '../../../src/record/values/stated-words.ts';

/** A weight computed as 36.7 kip, with this stated in its place. */
function stated(entry: string) {
  const book: Book = {
    ...blankBook(),
    sheets: [
      {
        key: 's',
        title: '',
        parts: [
          {
            id: 'p',
            kind: 'rows',
            rows: [
              {
                id: 'r',
                kind: 'calc',
                name: 'W',
                formula: '36.7 kip',
                unit: 'kip',
                stated: { entry, reason: 'client’s letter' },
              },
            ],
          },
        ],
      },
    ],
  };
  const notebook = openNotebook(book);
  const item = notebook.model.items.get('s.W');
  const [one] = item?.kind === 'formula' ? statedIn(notebook, item) : [];
  if (!one) throw new Error('nothing is stated');
  return { notebook, one };
}

test.each([
  ['52.5', 'SI', '52.5\u00a0kip'],
  ['52.5', 'written', undefined],
  ['250 kN', 'US', '250 kN'],
  ['250 kN', 'written', '250 kN'],
] as const)('what was typed as %s stands beside the %s units with its unit', (entry, view, typed) => {
  const { notebook, one } = stated(entry);
  expect(statedWords(notebook, one, view).typed).toBe(typed);
});
