import { bin } from 'd3-array';
import { PAGE_WIDTH } from '../svg/page.ts';
import { box, line } from '../svg/shapes.ts';
import { text, textElement } from '../svg/words.ts';
import { numberAxis } from './axis.ts';
import { columnTitle, type Series, spanOf } from './chart-data.ts';
import type { ChartForm } from './chart-form.ts';
import { alongAxis, type Field } from './panel.ts';

const LEFT = 70;
const RIGHT = PAGE_WIDTH - 22;
const TALL = 190;
const EACH = TALL + 84;

/** How many rows fall into equal steps of a column; one field a column. */
export const histogram: ChartForm = {
  called: 'Histogram',
  draw: (data) => ({
    height: 34 + data.series.length * EACH - 34,
    body: data.series
      .map((column, at) => {
        const top = 34 + at * EACH;
        return counts(column, { left: LEFT, right: RIGHT, top, bottom: top + TALL });
      })
      .join(''),
  }),
};

function counts(column: Series, field: Field): string {
  const values = column.values.filter(Number.isFinite);
  const [least, greatest] = spanOf(values);
  const along = numberAxis([least, greatest], [field.left, field.right], { count: 8 });
  const steps = Math.min(40, Math.max(5, Math.ceil(Math.log2(values.length) + 1)));
  const bins = bin<number, number>().domain([along.domain[0], along.domain[1]]).thresholds(steps)(values);
  const most = Math.max(0, ...bins.map((one) => one.length));
  const axis = numberAxis([0, most], [field.bottom, field.top]);
  const whole = axis.ticks.filter((tick) => Number.isInteger(Number(tick.text.replaceAll('\u202f', ''))));
  const marks = whole.map(
    (tick) =>
      line({ x: field.left, y: tick.at }, { x: field.right, y: tick.at }, { class: 'grid' }) +
      textElement(text(tick.text), { x: field.left - 6, y: tick.at + 4, anchor: 'end' }, { class: 'soft' }),
  );
  const bars = bins.map((one) => {
    if (one.length === 0 || one.x0 === undefined || one.x1 === undefined) return '';
    const from = { x: along.place(one.x0) + 0.75, y: axis.place(0) };
    const to = { x: along.place(one.x1) - 0.75, y: axis.place(one.length) };
    return box(from, to, { class: 'bar-0', 'data-count': one.length });
  });
  return (
    marks.join('') +
    bars.join('') +
    textElement(text('rows'), { x: 8, y: field.top - 12 }) +
    alongAxis(field, along.ticks, columnTitle(column))
  );
}
