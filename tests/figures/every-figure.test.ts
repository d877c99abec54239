import { describe, expect, test } from 'vitest';
import { drawChart, drawFigure, drawUtilisations, figureCss, figureKinds } from '../../src/figures/index.ts';
import type { Notebook } from '../../src/notebook/index.ts';
import {
  asText,
  drawn,
  figure,
  notebookOf,
  refusals,
  shapesOf,
  shippedBooks,
  shippedNotebook,
} from './picture.ts';

const views = ['written', 'SI', 'US'] as const;

/** Every drawing of a book, by what it is of. */
function drawings(notebook: Notebook, view: (typeof views)[number]) {
  return notebook.book.sheets.flatMap((sheet) =>
    sheet.parts.flatMap((part) => {
      if (part.kind === 'figure')
        return [{ name: part.id, id: part.id, outcome: drawFigure(notebook, sheet.key, part, view) }];
      if (part.kind === 'chart')
        return [{ name: part.id, id: part.id, outcome: drawChart(notebook, sheet.key, part, view) }];
      return [];
    }),
  );
}

describe.each(shippedBooks().map(({ id }) => id))('the book %s', (id) => {
  const notebook = shippedNotebook(id);

  test.each(views)('draws all its sketches and charts, %s', (view) => {
    const all = drawings(notebook, view);
    expect(all.flatMap(({ outcome }) => refusals(outcome))).toEqual([]);
    expect(all.length).toBeGreaterThan(0);
    for (const { outcome } of all) expect(drawn(outcome).description).not.toMatch(/Left out|Not used/);
  });

  test('its drawings are sound, named, and styled by the style sheet alone', () => {
    const ids: string[] = [];
    for (const { id: part, svg } of [
      ...drawings(notebook, 'written').map(({ id: part, outcome }) => ({
        id: part,
        svg: drawn(outcome).svg,
      })),
      ...drawUtilisations(notebook).map((part, at) => ({
        id: at === 0 ? 'utilisations' : `utilisations-${at + 1}`,
        svg: asText(part).svg,
      })),
    ]) {
      const shapes = shapesOf(svg);
      expect(shapes[0]?.attributes).toMatchObject({
        role: 'img',
        'aria-labelledby': `${part}-title ${part}-desc`,
      });
      expect(shapes.slice(1, 3).map(({ name, text }) => [name, text !== ''])).toEqual([
        ['title', true],
        ['desc', true],
      ]);
      const own = shapes.flatMap(({ attributes }) => attributes.id ?? []);
      expect(own.filter((one) => !one.startsWith(`${part}-`))).toEqual([]);
      ids.push(...own);
      expect(svg).not.toMatch(/NaN|undefined|Infinity| style=|<style|<script| on\w+=/);
      const classes = new Set(shapes.flatMap(({ attributes }) => (attributes.class ?? '').split(' ')));
      classes.delete('');
      expect([...classes].filter((name) => !figureCss.includes(`.${name}`))).toEqual([]);
      for (const { attributes } of shapes)
        for (const [, url] of Object.values(attributes)
          .join(' ')
          .matchAll(/url\(#([^)]+)\)/g))
          expect(own).toContain(url);
    }
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('drawing twice gives the same text', () => {
    const texts = () => drawings(notebook, 'SI').map(({ outcome }) => drawn(outcome).svg);
    expect(texts()).toEqual(texts());
  });

  test.each(['', '0', '-1', '1e300', '1e-300', 'quux', '1/0'])(
    'never throws with every entry %j',
    (entry) => {
      const broken = shippedNotebook(id, (json) => {
        const book = JSON.parse(json) as {
          sheets: { parts: { kind: string; rows?: { entry?: string; kind: string }[] }[] }[];
        };
        for (const { parts } of book.sheets)
          for (const { rows = [] } of parts)
            for (const row of rows) if (row.kind === 'given') row.entry = entry;
        return JSON.stringify(book);
      });
      for (const { outcome } of drawings(broken, 'written')) {
        if (outcome.ok) {
          expect(asText(outcome.value).svg).not.toMatch(/NaN|Infinity/);
          shapesOf(asText(outcome.value).svg);
        } else expect(outcome.problems.every(({ message }) => message.length > 10)).toBe(true);
      }
      for (const part of drawUtilisations(broken)) shapesOf(asText(part).svg);
    },
  );

  test('never throws with every table empty', () => {
    const bare = shippedNotebook(id, (json) => {
      const book = JSON.parse(json) as {
        sheets: { parts: { kind: string; length?: number; columns?: { chunks?: unknown[] }[] }[] }[];
      };
      for (const part of book.sheets.flatMap(({ parts }) => parts)) {
        if (part.kind !== 'table' || part.length === undefined) continue;
        part.length = 0;
        for (const column of part.columns ?? []) if (column.chunks) column.chunks = [];
      }
      return JSON.stringify(book);
    });
    for (const { outcome } of drawings(bare, 'US')) if (outcome.ok) shapesOf(asText(outcome.value).svg);
    for (const part of drawUtilisations(bare)) shapesOf(asText(part).svg);
  });
});

test('a sketch of no known kind names the nearest', () => {
  expect(refusals(drawFigure(notebookOf({}), 's', figure('pile-profil', {})))).toEqual([
    'figure-unknown: there is no sketch “pile-profil”',
  ]);
});

test.each([...figureKinds.values()].map((kind) => [kind.name, kind] as const))(
  '%s says what it needs',
  (name, kind) => {
    const needed = Object.entries(kind.roles).filter(([, role]) => role.needed);
    const outcome = drawFigure(notebookOf({}), 's', figure(name, {}));
    expect(refusals(outcome)).toHaveLength(needed.length);
    expect(refusals(outcome)[0]).toContain('figure-cell-needed: the sketch has no cell for');
    const wrong = figure(name, Object.fromEntries(needed.map(([role]) => [role, 'nothing.here'])));
    expect(refusals(drawFigure(notebookOf({}), 's', wrong))[0]).toContain('figure-name-unknown');
  },
);

test('a role the sketch does not have is pointed out', () => {
  const notebook = notebookOf({ a: '1 min' });
  const cells = { load: 'a', haul: 'a', dump: 'a', return: 'a', mtach: 'a' };
  const { description } = drawn(drawFigure(notebook, 's', figure('haul-cycle', cells)));
  expect(description).toContain('this sketch has nothing called “mtach”; did you mean “match”?');
});

test('a name with its sheet in front is found, one of the own sheet first', () => {
  const notebook = notebookOf({ a: '1 min', b: '2 min' });
  const cells = { load: 's.a', haul: 'b', dump: 'a', return: 'a' };
  expect(
    drawn(drawFigure(notebook, 's', figure('haul-cycle', cells))).table?.rows.map(([, , value]) => value),
  ).toEqual(['1\u00a0min', '2\u00a0min', '1\u00a0min', '1\u00a0min']);
});
