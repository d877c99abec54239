import { expect, test } from 'vitest';
import { linesToFollow, optionsLeft } from '../../../../src/app/panel/methods/options-left.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';
import { blockOf, bookOf, calc, choice } from '../../../make-book.ts';

test('a choice knows which lines lack a method for its options, also by a text that passes it on', () => {
  const rule = choice('rule', 'API', { value: 'USACE', label: 'of USACE' }, 'own');
  const methods = [{ id: 'm', for: ['api'], formula: '1 m' }];
  const rest = { id: 'n', formula: '2 m' };
  const book = bookOf({
    s: [
      blockOf(
        'p',
        rule,
        calc('passed', 'IF(TRUE; rule; "stated")'),
        calc('a', { by: 'rule', methods }),
        calc('b', { by: 'passed', methods: [...methods, { id: 'o', for: ['own'], formula: '3 m' }] }),
        calc('c', { by: 'rule', methods: [...methods, rest] }),
      ),
    ],
  });
  const notebook = openNotebook(book);
  const item = notebook.model.items.get('s.rule');
  if (item?.kind !== 'input') throw new Error('the choice is gone');
  expect(optionsLeft(notebook, item).map((one) => [one.item.id, one.options])).toEqual([
    ['s.a', ['of USACE', 'own']],
    ['s.b', ['of USACE']],
  ]);
  // The line c has a method for all others.
  expect(linesToFollow(notebook, 's.rule', 's.a').map(({ id }) => id)).toEqual(['s.b']);
});
