import { tickStep } from 'd3-array';
import { type Markup, none, together } from '../../markup/index.ts';
import { PAGE_WIDTH } from '../svg/page.ts';
import { box, line } from '../svg/shapes.ts';
import { text, textElement } from '../svg/words.ts';
import { type Axis, isSpan, numberAxis, SMALLEST } from './axis.ts';
import { columnTitle, type Series, spanOf } from './chart-data.ts';
import type { ChartForm } from './chart-form.ts';
import { dayMarks } from './day-marks.ts';
import { alongAxis, type PlotArea } from './plot-area.ts';

const LEFT = 70;
const RIGHT = PAGE_WIDTH - 22;
const TALL = 190;
const EACH = TALL + 84;

/** How many rows fall into equal steps of a column; one field a column. */
export const histogram: ChartForm = {
  called: 'Histogram',
  draw: (data) => ({
    height: 34 + data.series.length * EACH - 34,
    body: together(
      data.series.map((column, at) => {
        const top = 34 + at * EACH;
        return counts(column, { left: LEFT, right: RIGHT, top, bottom: top + TALL });
      }),
    ),
  }),
};

function counts(column: Series, field: PlotArea): Markup {
  const values = column.values.filter(Number.isFinite);
  const bins = equalSteps(values);
  const along = numberAxis(
    [bins.from, bins.from + bins.step * bins.counts.length],
    [field.left, field.right],
    {
      round: false,
      count: 8,
    },
  );
  const most = Math.max(0, ...bins.counts);
  const axis = numberAxis([0, most], [field.bottom, field.top]);
  const whole = axis.ticks.filter((tick) => Number.isInteger(Number(tick.text.replaceAll('\u202f', ''))));
  const marks = whole.map((tick) =>
    together(
      line({ x: field.left, y: tick.at }, { x: field.right, y: tick.at }, { class: 'grid' }),
      textElement(text(tick.text), { x: field.left - 6, y: tick.at + 4, anchor: 'end' }, { class: 'soft' }),
    ),
  );
  const bars = bins.counts.map((count, at) => {
    if (count === 0) return none;
    const start = bins.from + at * bins.step;
    const from = { x: along.place(start) + 0.75, y: axis.place(0) };
    const to = { x: along.place(start + bins.step) - 0.75, y: axis.place(count) };
    return box(from, to, { class: 'bar-0', 'data-count': count });
  });
  return together(
    marks,
    bars,
    textElement(text('rows'), { x: 8, y: field.top - 12 }),
    alongAxis(field, dayTicks(along, column), columnTitle(column)),
  );
}

/** How many values fall into each of equal round steps; a value on a limit counts above it. */
function equalSteps(values: Float64Array): {
  readonly from: number;
  readonly step: number;
  readonly counts: readonly number[];
} {
  const [least, greatest] = spanOf(values);
  const wanted = Math.min(40, Math.max(5, Math.ceil(Math.log2(values.length) + 1)));
  const size = Math.abs(least) < SMALLEST ? 1 : Math.abs(least);
  const step = isSpan(least, greatest) ? tickStep(least, greatest, wanted) : size;
  // A limit that misses a value by rounding alone is taken to meet it.
  const steps = (value: number): number => Math.floor(value / step + 1e-9);
  const first = steps(least);
  const counts = Array.from({ length: Math.max(1, Math.ceil(greatest / step - 1e-9) - first) }, () => 0);
  for (const value of values) {
    const at = Math.min(counts.length - 1, steps(value) - first);
    counts[at] = (counts[at] ?? 0) + 1;
  }
  return { from: first * step, step, counts };
}

/** The marks of an axis over days say the days. */
function dayTicks(along: Axis, { unit }: Series): Axis['ticks'] {
  if (unit.point !== 'date') return along.ticks;
  const marks = dayMarks(along.domain[0], along.domain[1], unit, 6);
  return marks.map(({ si, text: day }) => ({ at: along.place(si), text: day }));
}
