import { beforeEach, expect, test } from 'vitest';
import type { Session } from '../../../src/app/session/session.ts';
import type { PageViews } from '../../../src/app/storage/page-views.ts';
import type { PageView } from '../../../src/app/view-model/page-view.ts';
import { readPageView } from '../../../src/app/view-model/page-view.ts';
import { insertSheet, removeSheet } from '../../../src/document/index.ts';
import { computedSession } from '../computed-session.ts';
import { at, smallBook } from '../small-book.ts';

const second = {
  key: 'other',
  title: 'Other',
  parts: [{ id: 'o1', kind: 'prose', role: 'text', text: 'o' }],
} as const;
const L = at('p2', 'r1', 'value');

/** The storage of a tab, in which everything is text. */
function tab(): PageViews & { readonly texts: Map<string, string> } {
  const texts = new Map<string, string>();
  return {
    texts,
    read: (book) => readPageView(texts.get(book) ?? '{}'),
    write: (book, view) => {
      if (view) texts.set(book, JSON.stringify(view));
      else texts.delete(book);
    },
  };
}

let views = tab();
let session: Session;
const shown = (one: Session): PageView => ({
  sheet: one.sheet,
  ...(one.overview && { overview: one.overview }),
  ...(one.place && { place: one.place }),
});
/** The session of the page after a reload, with the second sheet as it was kept. */
const reloaded = (): Session => {
  const book = session.notebook.book;
  return computedSession(book, 'b', undefined, views);
};

beforeEach(() => {
  views = tab();
  session = computedSession(smallBook(), 'b', undefined, views);
  session.apply(insertSheet(1, second));
});

test.each<[string, (to: Session) => void, PageView]>([
  ['a cell', (to) => to.goTo(L), { sheet: 'beam', place: L }],
  ['a sheet', (to) => to.showSheet('other'), { sheet: 'other' }],
  ['a page that is no sheet', (to) => to.showOverview('sources'), { sheet: 'beam', overview: 'sources' }],
])('a reload shows %s again', (_, go, wanted) => {
  go(session);
  expect(shown(session)).toEqual(wanted);
  expect(shown(reloaded())).toEqual(wanted);
});

test('a reload shows the units that were shown', () => {
  session.setUnits('US');
  expect(reloaded().units).toBe('US');
  session.goTo(L);
  expect(reloaded().units).toBe('US');
  session.setUnits('written');
  expect(reloaded().units).toBe('written');
});

test('what is gone, or was no page ever, is not shown; the first sheet is', () => {
  session.showSheet('other');
  session.apply(removeSheet('other'));
  expect(shown(reloaded())).toEqual({ sheet: 'beam' });
  views.write('b', { sheet: 'beam', place: at('p2', 'gone', 'value') });
  expect(shown(reloaded())).toEqual({ sheet: 'beam' });
  for (const text of [
    '{}',
    '7',
    '{"sheet":3}',
    '{"sheet":"beam","overview":"toString","place":{"sheet":1}}',
  ]) {
    views.texts.set('b', text);
    expect(shown(reloaded())).toEqual({ sheet: 'beam' });
  }
});

test('the way back leads over pages and sheets as over cells, and ends', () => {
  session.goTo(L);
  session.showOverview('sources');
  session.jumpTo(at('p4', 'r5', 'value'));
  session.showSheet('other');
  session.showOverview('checks');
  const back: PageView[] = [];
  while (session.goBack()) back.push(shown(session));
  expect(back).toEqual([
    { sheet: 'other' },
    { sheet: 'beam', place: at('p4', 'r5', 'value') },
    { sheet: 'beam', overview: 'sources' },
    { sheet: 'beam', place: L },
  ]);
});

test('the way back goes past a sheet that is gone', () => {
  session.goTo(L);
  session.showSheet('other');
  session.showOverview('checks');
  session.apply(removeSheet('other'));
  expect([session.goBack(), shown(session)]).toEqual([true, { sheet: 'beam', place: L }]);
});
