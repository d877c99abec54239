import type { Cell, Random } from '../program.ts';
import type { Size } from './draw-ship.ts';

type Lines = Readonly<Record<string, Cell>>;

/** A bollard of the quay: where it stands, m, and its rating, tf. */
export interface QuayBollard {
  readonly name: string;
  readonly x: number;
  readonly rating: number;
}

/** Draws bollards in a row along the quay, evenly or nearly so. */
export function drawBollards(random: Random, { length }: Size): readonly QuayBollard[] {
  const rows = random.chance(0.005) ? 40 : random.chance(0.03) ? 1 : random.whole(3, 8);
  const usual = random.over(10, 400);
  const reach = length / 2 + 25;
  return Array.from({ length: rows }, (_, row) => ({
    name: random.chance(0.001) ? 'B1' : `B${row + 1}`,
    x: rows === 1 ? 0 : -reach + (2 * reach * row) / (rows - 1) + random.between(-3, 3),
    rating: random.chance(0.001) ? 0 : usual * random.between(0.7, 1.5),
  }));
}

/** Draws the rules of the rating. */
export function drawBollardRules(random: Random): Lines {
  return {
    'bollard.route': random.of(['MBL', 'brake', 'hooks', 'UFC', 'analysis', 'nominal']),
    'bollard.pulls': random.of(['intact', 'lost']),
    'bollard.p_br': random.between(30, 100),
    'bollard.γ_l': random.between(1, 2),
    ...(random.chance(0.2) && {
      'bollard.p_n': random.between(30, 80),
      'bollard.γ_n': random.between(1, 1.5),
    }),
    'bollard.n_p': random.whole(1, 4),
    'bollard.f_p': random.between(1, 2),
    'bollard.t_lim': random.chance(0.1) ? random.of([0, 90]) : random.between(0, 60),
  };
}

/** Draws the anchor bolts of one bollard, and the rules they are judged by. */
export function drawBolts(random: Random): Lines {
  const diameter = random.between(20, 110);
  return {
    'bolt.γ': random.chance(0.2) ? 1 : random.between(1, 2),
    'bolt.h': random.chance(0.05) ? 0 : random.between(0, 0.9),
    'bolt.a': random.chance(0.05) ? 0 : random.between(0, 1),
    'bolt.e_p': random.chance(0.01) ? 0 : random.between(0.1, 1),
    'bolt.s_d': random.between(2, 8),
    'bolt.d': diameter,
    'bolt.t_p': random.chance(0.01) ? 0 : random.between(10, 100),
    'bolt.A_by': random.of(['metric thread', 'share of the shank']),
    'bolt.p_th': random.chance(0.01) ? diameter * 1.2 : random.between(1, 8),
    'bolt.way': random.of(['toe', 'toe', 'centroid']),
    'bolt.code': random.of(['EN 1993-1-8', 'AISC 360', 'linear']),
    'bolt.cl': random.of([
      ...['4.6', '4.8', '5.6', '5.8', '6.8', '8.8', '10.9'],
      ...['F1554 grade 36', 'F1554 grade 55', 'F1554 grade 105', 'A307', 'A325', 'A490'],
    ]),
    ...(random.chance(0.3) && { 'bolt.f_ub': random.between(300, 1040) }),
    ...(random.chance(0.3) && { 'bolt.α_v': random.of([0.5, 0.6]) }),
    'bolt.k_2': random.of([0.63, 0.9]),
    'bolt.γ_M2': random.between(1.1, 1.5),
    'bolt.F_nt': random.between(200, 800),
    'bolt.F_nv': random.between(120, 500),
    'bolt.φ': random.between(0.6, 0.9),
    'bolt.threads': random.of(['in it', 'clear of it']),
    'bolt.N_R': random.chance(0.01) ? 0 : random.over(30, 3000),
    'bolt.V_R': random.chance(0.01) ? 0 : random.over(30, 3000),
    'bolt.lim_l': random.chance(0.5) ? 1.2 : random.between(1, 1.5),
  };
}
