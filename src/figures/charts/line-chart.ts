import { line as curveOf } from 'd3-shape';
import { type Markup, none, together } from '../../markup/index.ts';
import { coordinate } from '../svg/markup.ts';
import { PAGE_WIDTH } from '../svg/page.ts';
import { circle, line, path } from '../svg/shapes.ts';
import { spread } from '../svg/spread.ts';
import { textElement } from '../svg/words.ts';
import { type AlongScale, alongScale } from './along.ts';
import { numberAxis } from './axis.ts';
import { type ChartData, columnTitle, type Series, spanOf } from './chart-data.ts';
import type { ChartForm } from './chart-form.ts';
import { decimate } from './decimate.ts';
import {
  alongAxis,
  type Group,
  groupsOf,
  legend,
  type PlotArea,
  seriesWords,
  valueAxis,
  widest,
} from './plot-area.ts';

const LEFT = 70;
const TALL = 210;
const GAP = 46;
const MOST_POINTS = 2000;
const TONES = 6;
const LABEL = 150;

/** Curves over a column; a row without a value is a gap. One field for each dimension, one below another. */
export const lineChart: ChartForm = {
  called: 'Line chart',
  draw: (data) => {
    const groups = groupsOf(data.series);
    const labelled = data.series.length > 1;
    const fitting = groups.every((group) => group.series.length * 16 <= TALL);
    const direct = labelled && fitting;
    const words = data.series.map((column) => seriesWords(column, LABEL));
    const shared = groups.some((group) => group.series.length > 1);
    const right = PAGE_WIDTH - 22 - (direct && shared ? widest(words) + 8 : 0);
    const scale = alongScale(data.along, [LEFT + 4, right]);
    const markup: Markup[] = [];
    let top = 34;
    groups.forEach((group, at) => {
      const field: PlotArea = { left: LEFT, right, top, bottom: top + TALL };
      const last = at === groups.length - 1;
      markup.push(panel(group, field, scale, data, direct && group.series.length > 1));
      markup.push(alongAxis(field, scale.ticks, last ? columnTitle(data.along) : []));
      top += TALL + (last ? 0 : GAP + 18);
    });
    let height = top + 44;
    if (labelled && !direct) {
      const entries = data.series.map((column, tone) => ({
        words: seriesWords(column, 260),
        sign: (x: number, y: number) =>
          line({ x, y }, { x: x + 24, y }, { class: `curve tone-${tone % TONES}` }),
      }));
      const below = legend(entries, LEFT, PAGE_WIDTH - 8, height);
      markup.push(below.markup);
      height += below.height;
    }
    return { height, body: together(markup) };
  },
};

function panel(group: Group, field: PlotArea, scale: AlongScale, data: ChartData, direct: boolean): Markup {
  const [least, greatest] = spanOf(...group.series.map(({ column }) => column.values));
  const from = least > 0 && least < greatest * 0.6 ? 0 : least;
  const to = greatest < 0 && greatest > least * 0.6 ? 0 : greatest;
  const axis = numberAxis([from, to], [field.bottom, field.top]);
  const budget = Math.max(60, Math.floor(MOST_POINTS / data.series.length));
  const ends: { y: number; column: Series; x: number }[] = [];
  const curves = group.series.map(({ column, tone }) => {
    const rows = decimate(column.values, budget);
    const drawn = (row: number): boolean =>
      Number.isFinite(column.values[row]) && Number.isFinite(scale.place(row));
    const x = (row: number): number => scale.place(row);
    const y = (row: number): number => axis.place(column.values[row] ?? Number.NaN);
    const d = curveOf<number>()
      .defined(drawn)
      .x((row) => Number(coordinate(x(row))))
      .y((row) => Number(coordinate(y(row))))([...rows]);
    const alone = rows.filter(
      (row, at) =>
        drawn(row) &&
        (rows.length <= 30 || !(drawn(rows[at - 1] ?? Number.NaN) || drawn(rows[at + 1] ?? Number.NaN))),
    );
    const end = [...rows].reverse().find(drawn);
    if (end !== undefined) ends.push({ x: x(end), y: y(end), column });
    const style = tone % TONES;
    return together(
      path(d ?? '', { class: `curve tone-${style}`, 'data-series': column.name }),
      alone.map((row) => circle({ x: x(row), y: y(row) }, 2, { class: `mark-${style}` })),
    );
  });
  return together(valueAxis(field, axis, group), curves, direct ? endLabels(ends, field) : none);
}

/** The names of the curves at their ends, moved apart where they meet. */
function endLabels(
  ends: readonly { readonly x: number; readonly y: number; readonly column: Series }[],
  field: PlotArea,
): Markup {
  const places = spread(
    ends.map(({ y }) => y),
    16,
    field.top,
    field.bottom - 2,
  );
  const x = field.right + 12;
  return together(
    ends.map((end, at) => {
      const place = places[at] ?? end.y;
      const moved = Math.abs(place - end.y) > 3 || x - end.x > 20;
      return together(
        moved ? line({ x: end.x + 3, y: end.y }, { x: x - 3, y: place }, { class: 'leader' }) : none,
        textElement(seriesWords(end.column, LABEL), { x, y: place + 4 }),
      );
    }),
  );
}
