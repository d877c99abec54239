import { type Outcome, succeed } from '../diagnostics/index.ts';
import type { Chart } from '../document/index.ts';
import type { Notebook } from '../notebook/index.ts';
import { barChart } from './charts/bar-chart.ts';
import { chartData } from './charts/chart-data.ts';
import type { ChartForm } from './charts/chart-form.ts';
import { chartTable, chartWords } from './charts/chart-table.ts';
import { histogram } from './charts/histogram.ts';
import { lineChart } from './charts/line-chart.ts';
import type { Drawing, FigureView } from './drawing.ts';
import { frameSketch } from './svg/page.ts';

const forms: Readonly<Record<Chart['form'], ChartForm>> = { line: lineChart, bar: barChart, histogram };

/**
 * Draws a chart of a table's columns as they stand. Problems if the table or its columns are not there or have no
 * value; a column that alone has none is left out with a note. Never throws.
 */
export function drawChart(
  notebook: Notebook,
  sheetKey: string,
  part: Chart,
  view: FigureView = 'written',
): Outcome<Drawing> {
  const read = chartData(notebook, sheetKey, part, view);
  if (!read.ok) return read;
  const data = read.value;
  const form = forms[part.form];
  const sketch = form.draw(data);
  const notes = [...(sketch.notes ?? []), ...data.notes];
  const description = [chartWords(form.called, data), ...notes].join(' ');
  const title =
    part.title === undefined || part.title === '' ? `${form.called} of ${part.table}` : part.title;
  return succeed({
    svg: frameSketch(part.id, title, description, { ...sketch, notes }),
    title,
    description,
    table: chartTable(data),
  });
}
