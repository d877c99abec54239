import { expect, test } from 'vitest';
import type { Choice } from '../../../src/document/index.ts';
import { textsIn } from '../../../src/language/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { appliesInWords } from '../../../src/record/lines/applies-in-words.ts';
import { blockOf, bookOf, calc, choice, given } from '../../make-book.ts';

const rule: Choice = choice('rule', { value: 'clay_alpha', label: 'α of clay' }, 'sand');

/** The texts of the condition of a check on sheet `s`, as people read them. */
function textsOf(applies: string): readonly string[] {
  const check = { id: 'c', kind: 'check', name: 'c', formula: 'a <= 2 m', applies } as const;
  const copy = calc('copy', 'rule');
  const notebook = openNotebook(
    bookOf({
      s: [blockOf('b', rule, copy, given('a', '1', 'm'), check)],
      t: [blockOf('b', { ...rule, name: 'way' })],
    }),
  );
  const item = notebook.model.items.get('s.c');
  if (item?.kind !== 'formula') throw new Error('there is no check');
  const condition = appliesInWords(notebook, item);
  if (!condition) throw new Error('there is no condition');
  return textsIn(condition.syntax);
}

test.each([
  ['rule = "clay_alpha"', ['α of clay']],
  ['"clay_alpha" <> rule', ['α of clay']],
  ['AND(NOT(t.way = "clay_alpha"); rule = "sand")', ['α of clay', 'sand']],
  // What is compared with no choice is what it is.
  ['rule & "x" = "clay_alpha"', ['x', 'clay_alpha']],
])('the condition %s is read with %j', (applies, texts) => {
  expect(textsOf(applies)).toEqual(texts);
});
