import { workBollards } from './bollard-pull/bollards.ts';
import { workBolts } from './bollard-pull/bolts.ts';
import { workCurrent } from './bollard-pull/current.ts';
import { draw } from './bollard-pull/draw.ts';
import { readEntries } from './bollard-pull/entries.ts';
import { workLines } from './bollard-pull/lines.ts';
import { workLoad } from './bollard-pull/load.ts';
import { workMooring } from './bollard-pull/mooring.ts';
import { workRope } from './bollard-pull/rope.ts';
import { workShip } from './bollard-pull/ship.ts';
import { units } from './bollard-pull/units.ts';
import { workWind } from './bollard-pull/wind.ts';
import type { Cell, Drawn, IndependentProgram, Verdict, Worked } from './program.ts';

const steps =
  'the template takes the worst of sixty steps of the angle of the pull, the program the worst of all';

/** Bollard pull and mooring lines, from the standards that its template names. */
export const bollardPull: IndependentProgram = {
  template: 'bollard-pull',
  units,
  draw,
  work,
  loose: {
    'bolt.c_bolt': { relative: 0.005, reason: steps },
    'bolt.c_anchor': { relative: 0.0005, reason: steps },
  },
};

function work(drawn: Drawn): Worked {
  const entries = readEntries(drawn);
  const { ship, worked: ofShip } = workShip(entries);
  const wind = workWind(entries, ship);
  const current = workCurrent(entries, ship);
  const { load, worked: ofLoad } = workLoad(
    entries,
    ship,
    [{ angle: entries.number('wind.θ_w'), force: wind.force }, ...wind.others],
    [{ angle: entries.number('current.θ_c'), force: current.force }, ...current.others],
  );
  const { lines, worked: ofLines } = workLines(entries);
  const mooring = workMooring(entries, lines, load, ship);
  const bollards = workBollards(entries, lines, mooring.pulls, load.nominal);
  const bolts = bollards.boltPull === undefined ? {} : workBolts(entries, bollards.boltPull);
  return refuse({
    ...ofShip,
    ...wind.worked,
    ...current.worked,
    ...ofLoad,
    ...ofLines,
    ...mooring.worked,
    ...bollards.worked,
    ...bolts,
    ...workRope(entries, ship.gravity),
  });
}

/** What came out as no number is no value. */
function refuse(worked: Worked): Worked {
  const valued = (cell: Cell): Cell => (typeof cell === 'number' && !Number.isFinite(cell) ? null : cell);
  return Object.fromEntries(
    Object.entries(worked).map(([name, result]): [string, Cell | Verdict | readonly Cell[]] => {
      if (Array.isArray(result)) return [name, (result as readonly Cell[]).map(valued)];
      if (result !== null && typeof result === 'object') return [name, result];
      return [name, valued(result)];
    }),
  );
}
