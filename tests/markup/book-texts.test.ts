import { describe, expect, test } from 'vitest';
import { openBook } from '../../src/document/index.ts';
import { drawChart, drawFigure, drawUtilisations } from '../../src/figures/index.ts';
import type { Markup } from '../../src/markup/index.ts';
import { type Notebook, openNotebook } from '../../src/notebook/index.ts';
import { math, symbolMath } from '../../src/record/index.ts';
import { typesetFormula, typesetNumbers } from '../../src/record/math/formula-set.ts';
import { hostileBook } from './hostile-book.ts';
import { readMarkup } from './read-markup.ts';

const widths = [4, 9, 20, 45, 400];

function notebookOf(json: string): Notebook {
  const opened = openBook(json);
  if (!opened.ok) throw new Error(opened.problems.map(({ message }) => message).join('\n'));
  return openNotebook(opened.value.book);
}

/** All markup that is made of a book. */
function markupOf(notebook: Notebook): readonly Markup[] {
  const { model, book } = notebook;
  const shown = { number: `“${'<b class=strange>'}”`, unit: '<i class=strange>' };
  const formulas = [...model.items.values()].flatMap((item) =>
    'checked' in item
      ? widths.flatMap((width) => [
          ...typesetFormula(item.checked, width).lines,
          ...(typesetNumbers(item.checked, width, {
            syntax: item.checked.syntax,
            shown: () => shown,
            notes: [],
          })?.lines ?? []),
        ])
      : [],
  );
  const drawings = book.sheets.flatMap((sheet) =>
    sheet.parts.flatMap((part) => {
      if (part.kind !== 'figure' && part.kind !== 'chart') return [];
      const drawn =
        part.kind === 'figure' ? drawFigure(notebook, sheet.key, part) : drawChart(notebook, sheet.key, part);
      return drawn.ok ? [drawn.value.svg] : [];
    }),
  );
  const symbols = [...model.items.keys()].map((name) => math(symbolMath(name)));
  return [
    ...formulas.map(({ markup }) => markup),
    ...drawings,
    ...(['wide', 'narrow'] as const).flatMap((page) =>
      drawUtilisations(notebook, page).map(({ svg }) => svg),
    ),
    ...symbols,
  ];
}

describe.each(['short', 'long'] as const)('a book full of %s markup', (length) => {
  const { json, texts } = hostileBook(length);
  const read = markupOf(notebookOf(json)).map(readMarkup);

  test('makes no element of its own', () => {
    expect(read.length).toBeGreaterThan(100);
    expect(read.flatMap(({ strange }) => strange)).toEqual([]);
  });

  // The labels of a sketch are cut where they are long; the words of its table have them whole.
  const whole =
    length === 'short'
      ? /^(text |key |title of a |option one|soil )/
      : /^(text |key |title of a |option one)/;
  test.each([...texts].filter(([where]) => whole.test(where) && !/(sheet|sketch|chart)$/.test(where)))(
    'has the %s whole',
    (_, text) => {
      const bare = (words: string): string => words.replace(/\s/g, '');
      const all = read.map(({ words }) => bare(words)).join('\n');
      expect(all).toContain(bare(text));
    },
  );
});
