import type { Drawn, Random } from '../program.ts';
import { drawBollardRules, drawBollards, drawBolts } from './draw-bollards.ts';
import { drawFenders, drawLines, drawMooringRules, type Quay } from './draw-lines.ts';
import { drawOthers, drawRope } from './draw-others.ts';
import { drawDirections, drawShip, drawTankerTables, drawWeather, shipSize } from './draw-ship.ts';

/** Draws a ship at a quay with lines, bollards and bolts, in weather mostly off the berth. */
export function draw(random: Random): Drawn {
  const size = shipSize(random);
  const bollards = drawBollards(random, size);
  const quay: Quay = { ...size, bollards };
  const combos = combinations(random);
  // Many directions of many combinations would take long.
  const isRound = combos.length <= 6 && random.chance(0.3);
  return {
    lines: {
      ...drawShip(random, size),
      ...drawWeather(random),
      ...drawOthers(random, size),
      ...drawMooringRules(random),
      ...drawBollardRules(random),
      ...drawBolts(random),
      ...drawRope(random),
    },
    tables: {
      ...drawTankerTables(random),
      'load.combos': combos,
      ...drawDirections(random, isRound),
      'moor.lines': drawLines(random, quay),
      'moor.fenders': drawFenders(random, quay),
      'bollard.bollards': bollards.map(({ name, rating }) => ({ bollard: name, rate: rating })),
      'bolt.bolts': boltRows(random),
    },
  };
}

function combinations(random: Random): Drawn['tables'][string] {
  const rows = random.chance(0.02)
    ? 40
    : random.chance(0.005)
      ? 0
      : random.chance(0.2)
        ? 1
        : random.whole(2, 6);
  const factor = (): number => (random.chance(0.4) ? 1 : random.chance(0.3) ? 0 : random.between(0, 2));
  return Array.from({ length: rows }, (_, row) => ({
    combo: `case ${row + 1}`,
    f_w: factor(),
    f_c: factor(),
    f_o: factor(),
  }));
}

function boltRows(random: Random): Drawn['tables'][string] {
  const rows = random.chance(0.01) ? 40 : random.chance(0.05) ? 1 : random.whole(2, 6);
  let from = random.chance(0.05) ? 0 : random.between(0.05, 0.4);
  return Array.from({ length: rows }, () => {
    const row = {
      y: from,
      n_r: random.chance(0.003) ? 2.5 : random.whole(1, 4),
      b_r: random.chance(0.02) ? 0 : random.between(0.1, 1.2),
    };
    from += random.chance(0.03) ? 0 : random.between(0.05, 0.4);
    return row;
  });
}
