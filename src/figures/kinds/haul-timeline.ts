import { type Markup, together } from '../../markup/index.ts';
import { fromSI } from '../../units/index.ts';
import { type Amount, amountText, unitWords } from '../cells/amount.ts';
import { numberAxis } from '../charts/axis.ts';
import { PAGE_WIDTH } from '../svg/page.ts';
import { box, line } from '../svg/shapes.ts';
import { spread } from '../svg/spread.ts';
import { strong, text, textElement, type Words } from '../svg/words.ts';
import type { Fleet } from './haul-loop.ts';

/** A step of the cycle that takes time. */
export interface Step {
  readonly name: string;
  readonly time: Amount;
  readonly words: Words;
}

interface TimelineFacts {
  readonly top: number;
  /** The cycle of a truck, in seconds, and what its steps add up to. */
  readonly round: number;
  readonly sum: number;
  readonly cycle: Amount | undefined;
  readonly exchange: Amount | undefined;
  readonly load: Amount;
}

const LEFT = 96;
const RIGHT = PAGE_WIDTH - 20;
const BAR = 16;

/** One round of a truck to the scale of time, and the loader beside it while the fleet goes round once. */
export function haulTimeline(
  steps: readonly Step[],
  fleet: Fleet,
  facts: TimelineFacts,
): { readonly markup: Markup; readonly height: number } {
  const { top, sum, round, load, exchange } = facts;
  const atLoader = load.si + (exchange?.si ?? 0);
  const period = fleet.busy === undefined ? sum : Math.max(round, (fleet.count * atLoader) / fleet.loaders);
  const longest = Math.max(sum, period);
  const x = (time: number): number => LEFT + ((RIGHT - LEFT) * time) / longest;
  const truckBar = top + 46;
  const loaderBar = truckBar + 40;
  const unit = facts.cycle?.unit ?? load.unit;
  const axis = numberAxis([0, fromSI(longest, unit)], [LEFT, RIGHT], { round: false, count: 8 });
  const axisAt = (fleet.busy === undefined ? truckBar : loaderBar) + BAR + 10;
  const body = [
    stepBars(steps, x, truckBar),
    textElement(strong('one truck'), { x: LEFT - 8, y: truckBar + 12, anchor: 'end' }),
    ...(fleet.busy === undefined ? [] : [loaderBars(fleet, facts, atLoader, period, x, loaderBar)]),
    line({ x: LEFT, y: axisAt }, { x: RIGHT, y: axisAt }, { class: 'axis' }),
    ...axis.ticks.map((tick) =>
      together(
        line({ x: tick.at, y: axisAt }, { x: tick.at, y: axisAt + 4 }, { class: 'axis' }),
        textElement(text(tick.text), { x: tick.at, y: axisAt + 17, anchor: 'middle' }, { class: 'soft' }),
      ),
    ),
    textElement(
      text(`time, ${unitWords(unit)}`),
      { x: LEFT - 8, y: axisAt + 17, anchor: 'end' },
      { class: 'soft' },
    ),
  ];
  return { markup: together(body), height: axisAt + 28 - top };
}

/** The steps one after another, their names above, moved apart where they are short. */
function stepBars(steps: readonly Step[], x: (time: number) => number, y: number): Markup {
  let start = 0;
  const bars = steps.map(({ name, time }) => {
    const from = start;
    start += time.si;
    return { name, time, from: x(from), to: x(start) };
  });
  const middles = bars.map(({ from, to }) => (from + to) / 2);
  const places = spread(middles, 64, LEFT + 24, RIGHT - 24);
  return together(
    bars.map(({ name, time, from, to }, at) => {
      const place = places[at] ?? from;
      const middle = middles[at] ?? from;
      return together(
        box(
          { x: from, y },
          { x: to, y: y + BAR },
          {
            class: name === 'load' ? 'busy' : 'move',
            'data-step': name,
          },
        ),
        textElement(text(name), { x: place, y: y - 25, anchor: 'middle' }),
        textElement(text(amountText(time)), { x: place, y: y - 11, anchor: 'middle' }, { class: 'soft' }),
        line({ x: place, y: y - 8 }, { x: middle, y }, { class: 'leader' }),
      );
    }),
  );
}

/** When a loader works while the fleet goes round once: filled while it loads, empty while it waits. */
function loaderBars(
  fleet: Fleet,
  facts: TimelineFacts,
  atLoader: number,
  period: number,
  x: (time: number) => number,
  y: number,
): Markup {
  const served = Math.max(1, Math.round(fleet.count / fleet.loaders));
  const every = period / served;
  const exchange = atLoader - facts.load.si;
  const fine = x(facts.load.si) - x(0) < 1.5;
  const blocks = fine
    ? [box({ x: x(0), y }, { x: x(period * (fleet.busy ?? 1)), y: y + BAR }, { class: 'busy' })]
    : Array.from({ length: served }, (_, at) =>
        box(
          { x: x(at * every + exchange), y },
          { x: x(Math.min(period, at * every + atLoader)), y: y + BAR },
          { class: 'busy', 'data-part': 'loading' },
        ),
      );
  const share = `${Math.round((fleet.busy ?? 1) * 100)} %`;
  return together(
    box({ x: x(0), y }, { x: x(period), y: y + BAR }, { class: 'idle' }),
    blocks,
    textElement(strong('loader'), { x: LEFT - 8, y: y + 6, anchor: 'end' }),
    textElement(text(`${share} at work`), { x: LEFT - 8, y: y + 20, anchor: 'end' }),
  );
}
