import type { Cell, Drawn, Random } from '../program.ts';
import type { QuayBollard } from './draw-bollards.ts';
import type { Size } from './draw-ship.ts';

/** The ship's size and the bollards she ties up to. */
export interface Quay extends Size {
  readonly bollards: readonly QuayBollard[];
}

/** Draws the rules of the sharing and the limits of the plan. */
export function drawMooringRules(random: Random): Readonly<Record<string, Cell>> {
  return {
    'moor.rule': random.of(['cos2', 'cos2', 'cos', 'sway', '3-DOF', '3-DOF']),
    'moor.f_L': random.chance(0.2) ? 1 : random.between(1, 1.6),
    'moor.n_req': random.chance(0.1) ? 1 : random.between(1, 4),
    'moor.n_s': random.of([10, 10, 10, 10, 11, 11, 11, 11, 12, 12, 12, 12, 60]),
    'moor.p_lost': random.chance(0.5) ? 75 : random.between(30, 100),
    'moor.lim_x': random.between(0.1, 4),
    'moor.lim_y': random.between(0.1, 4),
    'moor.f_l': random.between(1, 3),
    'moor.lim_τ': random.between(10, 45),
    'moor.lim_b': random.between(5, 45),
    'moor.lim_s': random.between(5, 45),
    'moor.η_s': random.chance(0.1) ? random.of([0.1, 1]) : random.between(0.5, 1),
    'moor.η_b': random.chance(0.1) ? random.of([0.1, 1]) : random.between(0.5, 1),
    'moor.lim_w': random.chance(0.1) ? random.of([0.1, 1]) : random.between(0.4, 0.7),
  };
}

/** Draws the lines of a plan: head and stern lines, breasts and springs at both ends, or what is left of it. */
export function drawLines(random: Random, quay: Quay): Drawn['tables'][string] {
  const rows = random.chance(0.005)
    ? 40
    : random.chance(0.03)
      ? 1
      : random.chance(0.1)
        ? random.whole(2, 4)
        : random.whole(5, 11);
  const kind = random.of(['wire', 'HMPE', 'aramid', 'polyester', 'mixed', 'nylon']);
  const isMixed = random.chance(0.2);
  const isAtOnePlace = random.chance(0.02);
  const strength = random.over(150, 2500);
  const hasTails = random.chance(0.35);
  const allOff = random.chance(0.005);
  const blank = random.chance(0.03) ? random.whole(0, rows - 1) : undefined;
  const levels = { deck: random.between(3, 16), quay: random.between(1, 5) };
  return Array.from({ length: rows }, (_, row) => {
    const role = random.of(['head', 'breast', 'breast', 'spring'] as const);
    const end = row % 2 === 0 ? 1 : -1;
    const lines = drawPlace(random, quay, { role, end, isAtOnePlace, ...levels });
    const rope = drawRopeOf(random, {
      kind: isMixed ? random.of(['wire', 'HMPE', 'nylon', 'polyester']) : kind,
      strength,
      isFitted: hasTails && random.chance(0.9),
    });
    const line: Record<string, Cell> = {
      line: random.chance(0.002) ? 'L1' : `L${row + 1}`,
      acts: role === 'head' ? 'both' : role === 'breast' ? 'sway' : 'surge',
      on: allOff || random.chance(0.03) ? 'FALSE' : 'TRUE',
      ...lines,
      ...rope,
    };
    if (row === blank) line[random.of(['MBL_s', 'x_c', 'y_b', 'z_c', 'z_b', 'AE_t', 'd_r'])] = null;
    return line;
  });
}

function drawPlace(
  random: Random,
  { length, breadth, bollards }: Quay,
  of: {
    readonly role: 'head' | 'breast' | 'spring';
    readonly end: number;
    readonly isAtOnePlace: boolean;
    readonly deck: number;
    readonly quay: number;
  },
): Record<string, Cell> {
  const { role, end } = of;
  const out = { head: [0.44, 0.5], breast: [0.2, 0.46], spring: [0.1, 0.42] }[role];
  const x = of.isAtOnePlace ? length * 0.3 : end * length * random.between(out[0] ?? 0, out[1] ?? 0);
  const y = role === 'head' ? -random.between(0, 0.4) * breadth : -breadth / 2;
  const aim = {
    head: end * random.between(10, 40),
    breast: random.between(-5, 5),
    spring: -end * random.between(25, 60),
  }[role];
  const nearest = bollards.reduce((best, bollard) =>
    Math.abs(bollard.x - x - aim) < Math.abs(best.x - x - aim) ? bollard : best,
  );
  const isAsPlanned = of.isAtOnePlace || random.chance(0.3);
  const leadsUp = random.chance(0.02);
  const leadsAway = random.chance(0.003);
  const isBeyond = random.chance(0.003);
  return {
    bollard_of: random.chance(0.01) ? '-' : nearest.name,
    x_c: isBeyond ? x * 1.3 : x,
    y_c: isBeyond ? y + breadth : y,
    z_c: leadsUp ? of.quay - random.between(0, 8) : of.deck,
    // Straight away from the berth is half a turn either way.
    x_b: leadsAway
      ? x + 1
      : isAsPlanned
        ? role === 'breast' && random.chance(0.3)
          ? x
          : x + aim
        : nearest.x,
    y_b: leadsAway
      ? breadth
      : -breadth / 2 - (role === 'spring' ? random.between(1.5, 6) : random.between(2, 40)),
    z_b: of.quay,
  };
}

function drawRopeOf(
  random: Random,
  {
    kind,
    strength,
    isFitted,
  }: { readonly kind: string; readonly strength: number; readonly isFitted: boolean },
): Record<string, Cell> {
  const dry = strength * random.between(0.9, 1.1);
  return {
    kind,
    MBL_by: random.chance(0.8) ? 'certificate' : 'diameter',
    MBL_s: dry,
    d_r: Math.sqrt(dry / 0.6) * random.between(0.9, 1.6),
    parts: random.chance(0.001) ? random.of([0.5, 2.5]) : random.chance(0.8) ? 1 : random.whole(2, 3),
    tail: isFitted ? 'fitted' : 'none',
    L_t: random.chance(0.002) ? 200 : random.between(0, 3),
    // Now and then a stiffness in the wrong unit.
    AE_t: dry * random.between(3, 15) * (random.chance(0.005) ? random.of([1e-3, 1e3]) : 1),
    MBL_t: dry * random.between(0.9, 1.5),
    T_0: random.chance(0.3) ? 0 : dry * random.between(0, 0.1),
  };
}

/** Now and then, fenders along the flat side of the ship. */
export function drawFenders(random: Random, { length }: Quay): Drawn['tables'][string] {
  const count = random.chance(0.65) ? 0 : random.chance(0.1) ? 1 : random.whole(2, 6);
  const stiffness = random.over(200, 50_000);
  const reaction = random.over(100, 5000);
  return Array.from({ length: count }, (_, row) => ({
    fender: `F${row + 1}`,
    x_f: length * random.between(-0.35, 0.35),
    k_f: stiffness * random.between(0.8, 1.2),
    R_f: reaction * random.between(0.8, 1.2),
  }));
}
