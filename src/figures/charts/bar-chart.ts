import { type Attributes, type Markup, none, together } from '../../markup/index.ts';
import { createHatches, type Hatches } from '../svg/hatches.ts';
import { PAGE_WIDTH } from '../svg/page.ts';
import { box, line } from '../svg/shapes.ts';
import { text, textElement, wordsWidth } from '../svg/words.ts';
import { numberAxis } from './axis.ts';
import { type Along, type ChartData, columnTitle, numberText, spanOf } from './chart-data.ts';
import type { ChartForm } from './chart-form.ts';
import { boxSign, type Group, groupsOf, legend, type PlotArea, seriesWords, valueAxis } from './plot-area.ts';

const LEFT = 70;
const RIGHT = PAGE_WIDTH - 14;
const TALL = 210;
const MOST_BARS = 240;
const LONGEST_WORDS = 120;

/** A bar for each row and column, from zero; rows beyond the number of bars that are seen share one. */
export const barChart: ChartForm = {
  called: 'Bar chart',
  draw: (data) => {
    const hatches = createHatches(data.id);
    const groups = groupsOf(data.series);
    const markup: Markup[] = [];
    const rowsEach = Math.ceil(data.rows / MOST_BARS);
    let top = 34;
    if (data.series.length > 1) {
      const entries = data.series.map((column, tone) => ({
        words: seriesWords(column, 300),
        sign: boxSign(rowsEach > 1 ? manyStyle(tone) : barStyle(tone, hatches)),
      }));
      const above = legend(entries, LEFT, RIGHT, 0);
      markup.push(above.markup);
      top += above.height;
    }
    let bottom = top;
    groups.forEach((group, at) => {
      const field: PlotArea = { left: LEFT, right: RIGHT, top, bottom: top + TALL };
      markup.push(bars(group, field, data, rowsEach, hatches));
      bottom = field.bottom;
      if (at < groups.length - 1) top += TALL + 46;
    });
    const labels = rowLabels(data.along, rowsEach, bottom);
    markup.push(
      labels.markup,
      textElement(columnTitle(data.along), {
        x: (LEFT + RIGHT) / 2,
        y: bottom + labels.height + 18,
        anchor: 'middle',
      }),
    );
    return {
      height: bottom + labels.height + 28,
      definitions: hatches.definitions(),
      body: together(markup),
      notes:
        rowsEach > 1
          ? [`Each bar stands for ${rowsEach} rows: it reaches to the greatest and the least of them.`]
          : [],
    };
  },
};

/** How the bars of a series are filled: full, hatched, dotted, pale, then from the start. */
function barStyle(tone: number, hatches: Hatches): Attributes {
  const fills = [
    { class: 'bar-0' },
    { class: 'bar-edge', fill: hatches.fill('second') },
    { class: 'bar-edge', fill: hatches.fill('third') },
    { class: 'bar-soft bar-edge' },
  ] as const;
  return fills[tone % fills.length] ?? fills[0];
}

/** Bars too slim for strokes are filled. */
function manyStyle(tone: number): Attributes {
  return { class: tone % 2 === 0 ? 'bar-0' : 'bar-soft' };
}

function bars(group: Group, field: PlotArea, data: ChartData, rowsEach: number, hatches: Hatches): Markup {
  const [least, greatest] = spanOf(...group.series.map(({ column }) => column.values));
  const axis = numberAxis([Math.min(0, least), Math.max(0, greatest)], [field.bottom, field.top]);
  const places = Math.ceil(data.rows / rowsEach);
  const band = (field.right - field.left) / places;
  const count = group.series.length;
  const width = Math.min(46, (band * (rowsEach > 1 ? 1 : 0.74)) / count);
  const zero = axis.place(0);
  const drawn = group.series.map(({ column, tone }, within) => {
    const style: Attributes = rowsEach > 1 ? manyStyle(tone) : barStyle(tone, hatches);
    return Array.from({ length: places }, (_, place) => {
      const rows = column.values.subarray(place * rowsEach, (place + 1) * rowsEach);
      const [low, high] = spanOf(rows);
      if (!Number.isFinite(low)) return none;
      const middle = field.left + (place + 0.5) * band;
      const x = middle + (within - count / 2) * width;
      const from = { x, y: low < 0 ? axis.place(low) : zero };
      const to = { x: x + width, y: high > 0 ? axis.place(high) : zero };
      return box(from, to, { ...style, 'data-series': column.name, 'data-row': place });
    });
  });
  return together(
    valueAxis(field, axis, group),
    drawn,
    line({ x: field.left, y: zero }, { x: field.right, y: zero }, { class: 'axis' }),
  );
}

/** The words of the rows below the bars: level where they fit, slanting where they do not, some where they are many. */
function rowLabels(
  along: Along,
  rowsEach: number,
  bottom: number,
): { readonly markup: Markup; readonly height: number } {
  const { length } = along.values;
  const places = Math.ceil(length / rowsEach);
  const wordsAt = (place: number): string => {
    const row = place * rowsEach;
    if (along.kind === 'words') return along.values[row] ?? '';
    const value = along.values[row] ?? Number.NaN;
    return numberText(value, along.unit);
  };
  const band = (RIGHT - LEFT) / places;
  const all = Array.from({ length: places }, (_, place) => shortened(wordsAt(place)));
  const widest = Math.max(...all.map((words) => wordsWidth(text(words))));
  const level = widest + 6 <= band || along.kind === 'numbers';
  const every = level ? Math.max(1, Math.ceil((widest + 6) / band)) : Math.max(1, Math.ceil(15 / band));
  const marks = all.map((words, place) => {
    if (place % every !== 0 || words === '') return none;
    const x = LEFT + (place + 0.5) * band;
    const y = bottom + (level ? 17 : 13);
    return textElement(
      text(words),
      { x, y, anchor: level ? 'middle' : 'end' },
      { class: 'soft', transform: level ? undefined : `rotate(-38 ${x.toFixed(1)} ${y})` },
    );
  });
  return { markup: together(marks), height: level ? 18 : Math.min(LONGEST_WORDS, widest) * 0.62 + 18 };
}

function shortened(words: string): string {
  return words.length > 18 ? `${words.slice(0, 17)}…` : words;
}
