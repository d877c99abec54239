import { succeed } from '../../diagnostics/index.ts';
import { together } from '../../markup/index.ts';
import { type Amount, amountText, amountWords, valueText } from '../cells/amount.ts';
import { needed, wanted } from '../cells/role.ts';
import { AMOUNT_HEAD, amountRows, amountSentence, outOfBounds } from './bounds.ts';
import { type Fleet, haulLoop, MOST_TRUCKS } from './haul-loop.ts';
import { haulTimeline, type Step } from './haul-timeline.ts';
import { figureKind } from './kind.ts';

/** The trucks on their round between loader and tip, and one round to the scale of time. */
export const haulCycle = figureKind({
  name: 'haul-cycle',
  title: 'Haul cycle',
  roles: {
    load: needed('time', 'the time to load a truck'),
    exchange: wanted('time', 'the time to exchange trucks at the loader'),
    haul: needed('time', 'the time to haul'),
    dump: needed('time', 'the time to dump'),
    wait: wanted('time', 'the time a truck waits on its way'),
    spot: wanted('time', 'the time to spot at the loader'),
    return: needed('time', 'the time to return'),
    cycle: wanted('time', 'the cycle of a truck'),
    balance: wanted('plain', 'the trucks that keep the loaders busy'),
    trucks: wanted('plain', 'the trucks of the fleet'),
    match: wanted('plain', 'the match factor'),
    loaders: wanted('plain', 'the loaders'),
  },
  draw: (cells) => {
    const { load, exchange, haul, dump, wait, spot, cycle, balance, trucks, match } = cells;
    const back = cells.return;
    const times = [spot, exchange, load, haul, dump, wait, back];
    const negative = times.flatMap((time) =>
      time && time.si < 0 ? [outOfBounds(time, 'a time cannot be below zero')] : [],
    );
    const steps: readonly Step[] = [
      ...step('exchange', exchange),
      ...step('load', load),
      ...step('haul', haul),
      ...step('dump', dump),
      ...step('wait', wait),
      ...step('return', back),
      ...step('spot', spot),
    ];
    const sum = steps.reduce((total, one) => total + one.time.si, 0);
    const [first, ...others] = sum > 0 ? negative : [...negative, outOfBounds(haul, 'all times are zero')];
    if (first) return { ok: false, problems: [first, ...others] };

    const round = cycle && cycle.si > 0 ? cycle.si : sum;
    const atLoader = load.si + (exchange?.si ?? 0);
    const fleet = fleetOf(trucks, match, cells.loaders, atLoader, round);
    const notes = [
      ...(Math.abs(round - sum) > 0.005 * sum && cycle
        ? [`${cycle.name} is ${amountText(cycle)}; the times shown add up to ${valueText(sum, cycle.unit)}.`]
        : []),
      ...fleet.notes,
      ...(fleet.count > MOST_TRUCKS ? [`${MOST_TRUCKS} of ${fleet.count} trucks are shown.`] : []),
    ];
    const loop = haulLoop(cells, fleet, { round, atLoader });
    const timeline = haulTimeline(steps, fleet, { top: loop.height + 8, round, sum, cycle, exchange, load });
    const all = [...times, cycle, balance, trucks, match];
    return succeed({
      height: loop.height + 8 + timeline.height,
      body: together(loop.markup, timeline.markup),
      notes,
      description:
        `Trucks on their round between loader and tip. ${amountSentence(...all)} ${fleet.words}`.trim(),
      table: { head: AMOUNT_HEAD, rows: amountRows(...all) },
    });
  },
});

function step(name: string, time: Amount | undefined): readonly Step[] {
  return time && time.si > 0 ? [{ name, time, words: amountWords(time) }] : [];
}

/** The fleet as it goes round: how many trucks, how busy the loaders are, what waits. */
function fleetOf(
  trucks: Amount | undefined,
  match: Amount | undefined,
  loaders: Amount | undefined,
  atLoader: number,
  round: number,
): Fleet {
  if (!trucks || trucks.si < 1 || atLoader <= 0) return { count: 1, loaders: 1, notes: [], words: '' };
  const count = Math.round(trucks.si);
  const asked = (trucks.si * atLoader) / round;
  const inferred = match && match.si > 0 ? Math.max(1, Math.round(asked / match.si)) : 1;
  const serving = loaders && loaders.si >= 1 ? Math.round(loaders.si) : inferred;
  const factor = match && match.si > 0 ? match.si : asked / serving;
  const busy = Math.min(1, factor);
  const words =
    Math.abs(factor - 1) < 0.005
      ? 'Loader and trucks match.'
      : factor > 1
        ? 'Trucks wait for the loader.'
        : 'The loader waits for trucks.';
  return {
    count,
    loaders: serving,
    busy,
    words,
    notes: loaders || match ? [] : ['One loader is taken, since none is named.'],
  };
}
