import { type Attributes, type Markup, none, together } from '../../markup/index.ts';
import { unitWords } from '../cells/amount.ts';
import { box, line } from '../svg/shapes.ts';
import { LETTER, symbol, text, textElement, type Words, wordsWidth } from '../svg/words.ts';
import type { Axis } from './axis.ts';
import { columnTitle, type Series } from './chart-data.ts';

/** The part of a chart that its series are drawn in. */
export interface PlotArea {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Series that share a unit, drawn in one field. */
export interface Group {
  readonly series: readonly { readonly column: Series; readonly tone: number }[];
}

/** The series in groups of one dimension each, in order; within a group all are in the unit of the first. */
export function groupsOf(series: readonly Series[]): readonly Group[] {
  const groups = new Map<string, { column: Series; tone: number }[]>();
  series.forEach((column, tone) => {
    const { dimension, angle, point } = column.unit;
    const key = `${dimension.key}|${angle}|${point ?? ''}`;
    const group = groups.get(key);
    const first = group?.[0];
    if (!group || !first) groups.set(key, [{ column, tone }]);
    else group.push({ column: inUnitOf(first.column, column), tone });
  });
  return [...groups.values()].map((members) => ({ series: members }));
}

function inUnitOf(first: Series, column: Series): Series {
  const { factor, offset } = column.unit;
  const to = first.unit;
  if (factor === to.factor && offset === to.offset) return { ...column, unit: to };
  const values = column.values.map((value) => (value * factor + offset - to.offset) / to.factor);
  return { ...column, unit: to, values };
}

/** The axis of values at the left of a field, with faint lines across and its title above. */
export function valueAxis(field: PlotArea, axis: Axis, group: Group): Markup {
  const { left, right, top } = field;
  const marks = axis.ticks.map((tick) =>
    together(
      line({ x: left, y: tick.at }, { x: right, y: tick.at }, { class: 'grid' }),
      textElement(text(tick.text), { x: left - 6, y: tick.at + 4, anchor: 'end' }, { class: 'soft' }),
    ),
  );
  const [first] = group.series;
  const units = first ? unitWords(first.column.unit) : '';
  const title: Words = group.series.length === 1 && first ? columnTitle(first.column) : text(units);
  const zero = axis.domain[0] < 0 && axis.domain[1] > 0 ? axis.place(0) : undefined;
  return together(
    marks,
    zero === undefined ? none : line({ x: left, y: zero }, { x: right, y: zero }, { class: 'axis' }),
    textElement(title, { x: 8, y: top - 12 }),
  );
}

/** The base line of a field with marks along it. */
export function alongAxis(field: PlotArea, ticks: Axis['ticks'], title: Words): Markup {
  const { left, right, bottom } = field;
  const marks = ticks.map((tick) =>
    together(
      line({ x: tick.at, y: bottom }, { x: tick.at, y: bottom + 4 }, { class: 'axis' }),
      textElement(text(tick.text), { x: tick.at, y: bottom + 17, anchor: 'middle' }, { class: 'soft' }),
    ),
  );
  return together(
    line({ x: left, y: bottom }, { x: right, y: bottom }, { class: 'axis' }),
    marks,
    textElement(title, { x: (left + right) / 2, y: bottom + 35, anchor: 'middle' }),
  );
}

/** What a series is called where it is told apart: its symbol, and its description where that is short. */
export function seriesWords(column: Series, room: number): Words {
  const full: Words =
    column.label === '' || column.label === column.name
      ? symbol(column.name)
      : [...symbol(column.name), ...text(` ${column.label}`)];
  return wordsWidth(full) <= room ? full : symbol(column.name);
}

/** The width of the widest words. */
export function widest(words: readonly Words[]): number {
  return Math.max(0, ...words.map((one) => wordsWidth(one, LETTER)));
}

/** One entry of a legend: how its sign is drawn, and what it stands for. */
export interface LegendEntry {
  readonly words: Words;
  readonly sign: (x: number, y: number) => Markup;
}

const SIGN = 30;

/** A legend in lines as wide as the field; its height comes with it. */
export function legend(
  entries: readonly LegendEntry[],
  left: number,
  right: number,
  top: number,
): { readonly markup: Markup; readonly height: number } {
  let x = left;
  let y = top + 12;
  const markup = entries.map(({ words, sign }) => {
    const width = SIGN + wordsWidth(words) + 18;
    if (x > left && x + width > right) {
      x = left;
      y += 18;
    }
    const drawn = together(sign(x, y - 4), textElement(words, { x: x + SIGN, y }));
    x += width;
    return drawn;
  });
  return { markup: together(markup), height: y - top + 8 };
}

/** The sign of a filled series. */
export function boxSign(attributes: Attributes) {
  return (x: number, y: number): Markup => box({ x, y: y - 5 }, { x: x + 22, y: y + 5 }, attributes);
}
