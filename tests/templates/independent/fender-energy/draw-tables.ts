import type { Cell, Random } from '../program.ts';
import { shippedTables } from './tables.ts';

type Rows = readonly Readonly<Record<string, Cell>>[];

/** Published tables with other numbers at times, as one who corrects them would enter. */
export function drawTables(random: Random): Record<string, Rows> {
  const { chance } = random;
  const tables: Record<string, Rows> = {};
  if (chance(0.3)) tables['data.ships'] = drawShips(random);
  if (chance(0.1)) tables['data.brolsma'] = drawSpeeds(random).map((row) => jumble(random, row, ['M50']));
  if (chance(0.25)) tables['data.angles'] = drawAngles(random);
  if (chance(0.1))
    tables['data.tcn'] = drawSpeeds(random).map(({ M50, a }) => ({ M_s: M50 ?? null, v_s: a ?? null }));
  if (chance(0.1)) tables['data.is_speeds'] = drawSteps(random).map((row) => jumble(random, row, ['M_to']));
  for (const name of ['data.abnormal', 'data.pressure', 'data.friction'])
    if (chance(0.15)) tables[name] = (shippedTables[name] ?? []).map((row) => change(random, row));
  return tables;
}

/** A row with numbers that have passed their neighbours at times, but for the columns that are looked up. */
function jumble({ between, chance }: Random, row: Rows[number], but: readonly string[]): Rows[number] {
  if (chance(0.9)) return row;
  return Object.fromEntries(
    Object.entries(row).map(([column, cell]) => [
      column,
      typeof cell === 'number' && !but.includes(column) ? cell * between(0.6, 1.4) : cell,
    ]),
  );
}

function change({ between }: Random, row: Rows[number]): Rows[number] {
  return Object.fromEntries(
    Object.entries(row).map(([column, cell]) => [
      column,
      typeof cell === 'number' ? cell * between(0.8, 1.2) : cell,
    ]),
  );
}

function drawShips({ between, over, chance, whole }: Random): Rows {
  return Array.from({ length: chance(0.15) ? 1 : chance(0.1) ? 40 : whole(2, 12) }, (_, row) => {
    const mass = over(1200, 450_000);
    const block = chance(0.05) ? 1.1 : between(0.5, 0.9);
    const draught = (mass / (1.025 * block * 18)) ** (1 / 3) * between(0.9, 1.1);
    const beam = draught * between(2.3, 3.2);
    const length = mass / (1.025 * block * beam * draught);
    return {
      name: `ship ${row + 1}`,
      DWT_t: mass / 1.35,
      M_t: mass,
      L_OA_t: length * 1.05,
      L_BP_t: length,
      B_t: beam,
      D_t: draught,
      origin: chance(0.5) ? 'drawn' : null,
    };
  });
}

function drawSpeeds({ between, over, whole }: Random): Rows {
  let mass = over(500, 5000);
  let speed = between(0.2, 0.6);
  return Array.from({ length: whole(2, 40) }, () => {
    const row = { M50: mass, a: speed, b: speed * 1.2, c: speed * 1.5, d: speed * 1.7, e: speed * 2 };
    mass *= between(1.1, 2);
    speed *= between(0.75, 0.99);
    return row;
  });
}

/** Displacements up to which speeds hold, for five sites. */
function drawSteps(random: Random): Rows {
  return drawSpeeds(random).map(({ M50, a, b, c, d, e }) => ({
    M_to: M50 ?? null,
    s_1: e ?? null,
    s_2: d ?? null,
    s_3: c ?? null,
    s_4: b ?? null,
    s_5: a ?? null,
  }));
}

function drawAngles({ between, chance, whole }: Random): Rows {
  let [angle, factor] = [0, 1];
  const isOfOnes = chance(0.1);
  return Array.from({ length: whole(2, 40) }, () => {
    const row = { θ_t: angle, AF_t: isOfOnes ? 1 : factor * (chance(0.02) ? 1.1 : 1) };
    angle += between(1, 8);
    factor *= between(0.85, 1);
    return row;
  });
}

/** Fenders from small to large, some of them about as large as is needed; at times one of nothing. */
export function drawFenders({ between, of, chance, whole }: Random, needed: number, area: number): Rows {
  const length = chance(0.15) ? 1 : chance(0.1) ? 40 : whole(2, 10);
  const first = needed / (length > 10 ? 20 : 2);
  return Array.from({ length }, (_, row) => {
    const energy = length === 1 ? needed : first * (length > 10 ? 1.17 : 1.6) ** row;
    const height = 1300 * (energy / 987) ** (1 / 3) * between(0.85, 1.15);
    const deflection = chance(0.03) ? height * 1.1 : height * between(0.5, 0.75);
    const part = area * (chance(0.9) ? between(0.92, 1.08) : between(0.5, 1.5));
    const reaction = energy / ((part * deflection) / 1000);
    const broken = chance(0.004) ? of(['E_rated', 'R_rated', 'd_rated']) : undefined;
    const cells = { E_rated: energy, R_rated: reaction, d_rated: deflection };
    return {
      size: `fender ${row + 1}`,
      H: chance(0.03) ? null : height,
      ...cells,
      ...(broken !== undefined && { [broken]: of([0, broken === 'd_rated' ? 0 : -100]) }),
    };
  });
}

/** A curve that buckles, one that stiffens, a straight one; some that are no whole curve. */
export function drawCurve({ between, of, chance, whole }: Random): Rows {
  const kind = of(['buckles', 'stiffens', 'straight', 'peaks'] as const);
  const count = kind === 'straight' ? 2 : chance(0.1) ? 40 : whole(3, 16);
  const end = chance(0.05) ? of([0.7, 1.2]) : 1;
  const start = chance(0.03) ? 0.1 : 0;
  const peak = between(1.02, 1.3);
  const reactionAt = (d: number): number =>
    kind === 'buckles'
      ? d < 0.4
        ? d / 0.4
        : 1 - 0.6 * (d - 0.4) * (1 - d)
      : kind === 'peaks'
        ? d < 0.5
          ? (peak * d) / 0.5
          : peak + ((1 - peak) * (d - 0.5)) / 0.5
        : kind === 'stiffens'
          ? d ** 1.5
          : d;
  const rows = Array.from({ length: count }, (_, row) => {
    const d = row === count - 1 ? end : start + ((end - start) * row) / (count - 1);
    return { d, r: row === count - 1 && end === 1 ? 1 : reactionAt(d) };
  });
  if (chance(0.02)) return [...rows].reverse();
  return chance(0.02) ? rows.map(({ d, r }) => ({ d, r: r * 0.8 })) : rows;
}

/** Bents of one deck: equal and even, unequal, one alone, all on one line. */
export function drawBents({ between, of, chance, whole }: Random): Rows {
  const count = chance(0.04) ? 1 : chance(0.1) ? 40 : whole(2, 14);
  const pitch = chance(0.02) ? 0 : between(4, 9);
  const from = of([0, 0, -20, between(-50, 50)]);
  const equal = chance(0.4);
  return Array.from({ length: count }, (_, row) => ({
    bent: `bent ${row + 1}`,
    s: from + row * pitch + (equal ? 0 : between(0, pitch / 2)),
    k: equal ? 1 : chance(0.06) ? 0 : of([between(0.5, 1.5), between(0.5, 1.5), between(2, 12)]),
  }));
}
