import { expect, test } from 'vitest';
import type { Row } from '../../../src/document/index.ts';
import { sourceOfLine } from '../../../src/record/lines/source-of-line.ts';
import { sessionOn } from '../../app/editor/completion/sample-session.ts';
import { blockOf, bookOf } from '../../make-book.ts';

const given = (name: string, reference?: string): Row => ({
  id: name,
  kind: 'given',
  name,
  entry: '3 m',
  unit: 'm',
  ...(reference && { reference }),
});
const linked = (name: string, formula: string, reference?: string): Row => ({
  id: name,
  kind: 'calc',
  name,
  formula,
  unit: 'm',
  link: { kind: 'given', entry: '2 m' },
  ...(reference && { reference }),
});

test.each([
  ['pile.a', 'drawing 12'],
  ['pile.near', 'linked to a: drawing 12; without the link: structural analysis'],
  ['pile.far', 'linked to H on “load”: EN 1991-1-4; without the link: structural analysis'],
  ['pile.twice', 'linked to far: EN 1991-1-4'],
  ['pile.bare', 'linked to bare on “load”, which has no reference'],
  ['pile.broken', 'without the link: structural analysis'],
])('the source of %s is %s', (id, words) => {
  const { notebook } = sessionOn(
    bookOf({
      pile: [
        blockOf(
          'p',
          given('a', 'drawing 12'),
          linked('near', 'a', 'structural analysis'),
          linked('far', 'load.H', 'structural analysis'),
          linked('twice', 'far'),
          linked('bare', 'load.bare'),
          linked('broken', 'load.gone', 'structural analysis'),
        ),
      ],
      load: [blockOf('q', given('H', 'EN 1991-1-4'), given('bare'))],
    }),
  );
  const item = notebook.model.items.get(id);
  if (item?.kind !== 'input' && item?.kind !== 'formula') throw new Error(`${id} is no line`);
  expect(sourceOfLine(notebook, item.row, item)).toBe(words);
});
