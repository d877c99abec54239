import { text, wordsWidth } from '../svg/words.ts';
import { type Axis, numberAxis } from './axis.ts';
import { type Along, spanOf } from './chart-data.ts';
import { dayMarks } from './day-marks.ts';

/** Where rows stand along a chart, and the marks of its axis. */
export interface AlongScale {
  readonly place: (row: number) => number;
  readonly ticks: Axis['ticks'];
}

/** The scale of the column along a line chart: its numbers, its days, or its rows one after another. */
export function alongScale(along: Along, range: readonly [number, number]): AlongScale {
  if (along.kind === 'words') return rowScale(along.values, range);
  const { values, unit } = along;
  const span = spanOf(values);
  const at = (place: (value: number) => number) => (row: number) => place(values[row] ?? Number.NaN);
  if (unit.point === 'date') {
    const axis = numberAxis(span, range, { round: false });
    const marks = dayMarks(span[0], span[1], unit, 6);
    return {
      place: at(axis.place),
      ticks: marks.map(({ si, text: day }) => ({ at: axis.place(si), text: day })),
    };
  }
  const axis = numberAxis(span, range, { round: false, count: 7 });
  return { place: at(axis.place), ticks: axis.ticks };
}

/** Rows at equal distances, with as many of their words as have room. */
function rowScale(words: readonly string[], [from, to]: readonly [number, number]): AlongScale {
  const count = words.length;
  const place = (row: number): number =>
    count === 1 ? (from + to) / 2 : from + ((to - from) * row) / (count - 1);
  const widest = Math.max(1, ...words.slice(0, 400).map((word) => wordsWidth(text(word))));
  const every = Math.max(1, Math.ceil(((widest + 12) * Math.max(1, count - 1)) / Math.max(1, to - from)));
  const ticks = words.flatMap((word, row) => (row % every === 0 ? [{ at: place(row), text: word }] : []));
  return { place, ticks };
}
