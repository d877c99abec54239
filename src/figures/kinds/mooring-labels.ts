import { type Markup, together } from '../../markup/index.ts';
import type { Unit } from '../../units/index.ts';
import { fromSI, writeNumber } from '../../units/index.ts';
import { PAGE_WIDTH } from '../svg/page.ts';
import type { Point } from '../svg/point.ts';
import { line } from '../svg/shapes.ts';
import { spread } from '../svg/spread.ts';
import { strong, text, textElement, type Words } from '../svg/words.ts';
import type { MooringLine } from './mooring-lines.ts';

const ROW = 14.5;
const LEAD = 20;
const MOST_ROWS = 6;

interface Landed {
  readonly line: MooringLine;
  readonly bollard: Point;
}

/** The labels of lines, one column for each bollard. */
export interface LabelColumns {
  /** The height the columns above and below the plan take. */
  readonly above: number;
  readonly below: number;
  /** How many lines have no label, for want of room. */
  readonly left: number;
  /** The columns of a plan that stands between these heights of the page, tensions in a unit. */
  readonly draw: (top: number, bottom: number, unit: Unit | undefined) => Markup;
}

/** Arranges the labels of lines in columns beyond their bollards, above the plan and below it. */
export function labelColumns(landed: readonly Landed[], middle: number): LabelColumns {
  const up = side(landed.filter((one) => one.bollard.y <= middle));
  const down = side(landed.filter((one) => one.bollard.y > middle));
  return {
    above: up.height,
    below: down.height,
    left: up.left + down.left,
    draw: (top, bottom, unit) =>
      together(
        columnsOf(up.shown, unit, (bollard, rows) => ({
          bollard: bollard + top,
          foot: top - LEAD,
          first: top - LEAD - 5 - (rows - 1) * ROW,
        })),
        columnsOf(down.shown, unit, (bollard) => ({
          bollard: bollard + top,
          foot: bottom + LEAD,
          first: bottom + LEAD + 12,
        })),
      ),
  };
}

interface Side {
  readonly shown: readonly (readonly Landed[])[];
  readonly height: number;
  readonly left: number;
}

/** The columns of one side that have room, those of the most used lines first, in order along the quay. */
function side(landed: readonly Landed[]): Side {
  const columns = new Map<string, Landed[]>();
  for (const one of landed) {
    const key = `${one.bollard.x.toFixed(1)} ${one.bollard.y.toFixed(1)}`;
    const column = columns.get(key);
    if (column) column.push(one);
    else columns.set(key, [one]);
  }
  const rank = (column: readonly Landed[]): number =>
    Math.max(...column.map(({ line }) => line.utilisation ?? line.tension ?? 0));
  const widest = Math.max(...landed.map(({ line }) => labelWidth(line)), 30);
  const most = Math.max(1, Math.floor((PAGE_WIDTH - 16) / widest));
  const shown = [...columns.values()]
    .sort((a, b) => rank(b) - rank(a))
    .slice(0, most)
    .map((column) => [...column].sort((a, b) => use(b.line) - use(a.line)).slice(0, MOST_ROWS))
    .sort((a, b) => (a[0]?.bollard.x ?? 0) - (b[0]?.bollard.x ?? 0));
  const rows = Math.max(0, ...shown.map((column) => column.length));
  return {
    shown,
    height: rows === 0 ? 0 : rows * ROW + LEAD + 8,
    left: landed.length - shown.reduce((sum, column) => sum + column.length, 0),
  };
}

function use(line: MooringLine): number {
  return line.utilisation ?? line.tension ?? 0;
}

/** About the width of a label, before its tension is written. */
function labelWidth(line: MooringLine): number {
  return Math.min(line.name.length, 14) * 7 + 42;
}

type Heights = (bollard: number, rows: number) => { bollard: number; foot: number; first: number };

function columnsOf(shown: readonly (readonly Landed[])[], unit: Unit | undefined, heights: Heights): Markup {
  const wanted = shown.map((column) => column[0]?.bollard.x ?? 0);
  const widest = Math.max(...shown.flatMap((column) => column.map(({ line }) => labelWidth(line))), 30);
  const places = spread(wanted, widest, 8 + widest / 2, PAGE_WIDTH - 8 - widest / 2);
  return together(
    shown.map((column, at) => {
      const x = places[at] ?? 0;
      const bollard = column[0]?.bollard ?? { x, y: 0 };
      const y = heights(bollard.y, column.length);
      const rows = column.map(({ line }, row) =>
        textElement(
          label(line, unit),
          { x, y: y.first + row * ROW, anchor: 'middle' },
          { class: line.governs ? 'accent-text' : undefined },
        ),
      );
      const lead = line({ x, y: y.foot }, { x: bollard.x, y: y.bollard }, { class: 'leader' });
      return together(lead, rows);
    }),
  );
}

function label(line: MooringLine, unit: Unit | undefined): Words {
  const name = line.name.length > 14 ? `${line.name.slice(0, 13)}…` : line.name;
  if (line.slack) return text(`${name} slack`);
  if (line.tension === undefined || !unit) return text(name);
  const tension = writeNumber(fromSI(line.tension, unit), { digits: 3 });
  return line.governs ? strong(`${name} ${tension}`) : text(`${name} ${tension}`);
}
