import { type Markup, none, together } from '../../markup/index.ts';
import { type Amount, amountWords } from '../cells/amount.ts';
import {
  between,
  directionOf,
  lengthOf,
  minus,
  type Point,
  plus,
  rotateQuarter,
  times,
} from '../svg/point.ts';
import { box, line, path, pathThrough } from '../svg/shapes.ts';
import { strong, text, textElement, type Words } from '../svg/words.ts';

/** Trucks and loaders; `busy` is the share of the time the loaders work, where the fleet is known. */
export interface Fleet {
  readonly count: number;
  readonly loaders: number;
  readonly busy?: number;
  readonly words: string;
  readonly notes: readonly string[];
}

interface LoopCells {
  readonly load: Amount;
  readonly exchange: Amount | undefined;
  readonly haul: Amount;
  readonly dump: Amount;
  readonly wait: Amount | undefined;
  readonly spot: Amount | undefined;
  readonly return: Amount;
  readonly balance: Amount | undefined;
  readonly trucks: Amount | undefined;
  readonly match: Amount | undefined;
}

const LEFT = 150;
const RIGHT = 570;
const UPPER = 46;
const LOWER = 178;
/** So many trucks the road shows at most. */
export const MOST_TRUCKS = 60;
const TRUCK_ROOM = 18;

/** A stretch of the road with the time a truck spends on it; it carries its load or not. */
interface Leg {
  readonly way: readonly Point[];
  readonly time: number;
  readonly loaded: boolean;
}

/**
 * The round as a loop: loader at the left, tip at the right, the way out above and the way back below. Trucks stand
 * where they are after equal times, so those that wait stand close.
 */
export function haulLoop(
  cells: LoopCells,
  fleet: Fleet,
  { round, atLoader }: { readonly round: number; readonly atLoader: number },
): { readonly markup: Markup; readonly height: number } {
  const corners = {
    upperLeft: { x: LEFT, y: UPPER },
    upperRight: { x: RIGHT, y: UPPER },
    lowerRight: { x: RIGHT, y: LOWER },
    lowerLeft: { x: LEFT, y: LOWER },
  };
  const loader = { x: LEFT, y: (UPPER + LOWER) / 2 };
  const queue = Math.max(0, (fleet.count * atLoader) / fleet.loaders - round);
  const waiting = queue > 0 ? (queue / (round + queue)) * fleet.count : 0;
  // Those that stand in line take the end of the way back, as much as they need of it.
  const back = Math.min(RIGHT - LEFT - 60, Math.max(0, waiting * TRUCK_ROOM - (LOWER - loader.y)));
  const joins = { x: LEFT + back, y: LOWER };
  const { upperLeft, upperRight, lowerRight, lowerLeft } = corners;
  const legs: readonly Leg[] = [
    { way: [loader, upperLeft], time: cells.load.si, loaded: true },
    { way: [upperLeft, upperRight], time: cells.haul.si, loaded: true },
    { way: [upperRight, lowerRight], time: cells.dump.si + (cells.wait?.si ?? 0), loaded: true },
    { way: [lowerRight, joins], time: cells.return.si, loaded: false },
    {
      way: [joins, lowerLeft, loader],
      time: (cells.spot?.si ?? 0) + (cells.exchange?.si ?? 0) + queue,
      loaded: false,
    },
  ];
  const road = pathThrough([upperLeft, upperRight, lowerRight, lowerLeft], true);
  const shown = Math.min(fleet.count, MOST_TRUCKS);
  const body = [
    path(road, { class: 'road', 'stroke-linejoin': 'round' }),
    path(road, { class: 'center' }),
    ...trucksOn(legs, shown),
    machine(loader, 'loader'),
    tip({ x: RIGHT, y: (UPPER + LOWER) / 2 }),
    textElement([...named('haul', cells.haul), ...text('  →')], {
      x: (LEFT + RIGHT) / 2,
      y: UPPER - 14,
      anchor: 'middle',
    }),
    textElement([...text('←  '), ...named('return', cells.return)], {
      x: (LEFT + RIGHT) / 2,
      y: LOWER + 24,
      anchor: 'middle',
    }),
    ...column(
      [named('load', cells.load), ...each('exchange', cells.exchange), ...each('spot', cells.spot)],
      LEFT - 26,
      loader.y,
      'end',
    ),
    ...column([named('dump', cells.dump), ...each('wait', cells.wait)], RIGHT + 26, loader.y, 'start'),
    ...column(inside(cells, fleet), (LEFT + RIGHT) / 2, loader.y, 'middle'),
  ];
  return { markup: together(body), height: LOWER + 34 };
}

function named(word: string, amount: Amount): Words {
  return [...text(`${word} `), ...amountWords(amount)];
}

function each(word: string, amount: Amount | undefined): readonly Words[] {
  return amount && amount.si > 0 ? [named(word, amount)] : [];
}

/** What is said of the fleet in the middle of the loop. */
function inside(cells: LoopCells, fleet: Fleet): readonly Words[] {
  const { trucks, balance, match } = cells;
  return [
    ...(trucks ? [[...strong(`${fleet.count} trucks`), ...loadersWords(fleet)]] : []),
    ...(match ? [named('match factor', match)] : []),
    ...(balance ? [named('balance', balance)] : []),
    ...(fleet.words === '' ? [] : [text(fleet.words)]),
  ];
}

function loadersWords(fleet: Fleet): Words {
  return text(fleet.loaders === 1 ? ', 1 loader' : `, ${fleet.loaders} loaders`);
}

function column(
  lines: readonly Words[],
  x: number,
  middle: number,
  anchor: 'start' | 'middle' | 'end',
): readonly Markup[] {
  const first = middle + 4 - ((lines.length - 1) * 17) / 2;
  return lines.map((words, at) => textElement(words, { x, y: first + at * 17, anchor }));
}

/** The trucks at equal times round the loop, the first one being loaded. */
function trucksOn(legs: readonly Leg[], count: number): readonly Markup[] {
  const whole = legs.reduce((sum, leg) => sum + leg.time, 0);
  return Array.from({ length: count }, (_, at) => {
    let time = ((at + 0.5) / count) * whole;
    const leg = legs.find((one) => {
      if (time < one.time) return true;
      time -= one.time;
      return false;
    });
    if (!leg) return none;
    const { at: place, ahead } = alongWay(leg.way, time / leg.time);
    return truck(place, ahead, leg.loaded);
  });
}

/** The place at a share of a way of straight stretches, and where it leads from there. */
function alongWay(way: readonly Point[], share: number): { readonly at: Point; readonly ahead: Point } {
  const stretches = way.slice(1).map((to, at) => ({ from: way[at] ?? to, to }));
  const whole = stretches.reduce((sum, { from, to }) => sum + lengthOf(minus(to, from)), 0);
  let left = share * whole;
  for (const { from, to } of stretches) {
    const length = lengthOf(minus(to, from));
    if (left <= length && length > 0) return { at: between(from, to, left / length), ahead: minus(to, from) };
    left -= length;
  }
  const last = way.at(-1) ?? { x: 0, y: 0 };
  return { at: last, ahead: { x: 1, y: 0 } };
}

/** A truck from above, driving one way: filled with its load, or empty. */
function truck(at: Point, way: Point, loaded: boolean): Markup {
  const along = directionOf(way);
  const side = rotateQuarter(along);
  const corner = (a: number, b: number): Point => plus(at, plus(times(along, a), times(side, b)));
  const bed = pathThrough([corner(-7, -3.5), corner(3, -3.5), corner(3, 3.5), corner(-7, 3.5)], true);
  const cab = pathThrough([corner(4, -3), corner(7, -3), corner(7, 3), corner(4, 3)], true);
  return together(
    path(bed, { class: loaded ? 'busy' : 'hollow', 'data-truck': loaded ? 'loaded' : 'empty' }),
    path(cab, { class: 'hollow' }),
  );
}

function machine(at: Point, name: string): Markup {
  const { x, y } = at;
  return together(
    box({ x: x - 13, y: y - 9 }, { x: x + 13, y: y + 9 }, { class: 'body', 'data-part': name }),
    line({ x: x - 13, y: y + 9 }, { x: x + 13, y: y - 9 }, { class: 'thin' }),
    line({ x: x - 13, y: y - 9 }, { x: x + 13, y: y + 9 }, { class: 'thin' }),
  );
}

function tip(at: Point): Markup {
  const { x, y } = at;
  return path(
    pathThrough(
      [
        { x: x - 14, y: y + 9 },
        { x, y: y - 10 },
        { x: x + 14, y: y + 9 },
      ],
      true,
    ),
    { class: 'body', 'data-part': 'tip' },
  );
}
