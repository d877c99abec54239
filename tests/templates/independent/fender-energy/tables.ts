import type { Cell, Drawn } from '../program.ts';

/** A table written column by column, as rows. */
function fromColumns(columns: Readonly<Record<string, readonly Cell[]>>): Drawn['tables'][string] {
  const length = Math.max(...Object.values(columns).map((cells) => cells.length));
  return Array.from({ length }, (_, row) =>
    Object.fromEntries(Object.entries(columns).map(([name, cells]) => [name, cells[row] ?? null])),
  );
}

/** Hulls that lie against a panel with a belting. */
export const belted: readonly string[] = ['cruise ship', 'ferry', 'ro-ro ship', 'tug or workboat'];

/** Hulls that the guideline speaks of. */
export const hulls: readonly string[] = [
  'container, 1st or 2nd generation',
  'container, 3rd generation',
  'container, 4th generation',
  'container, 5th or 6th generation',
  'general cargo to 20 000 DWT',
  'general cargo above 20 000 DWT',
  'tanker to 60 000 DWT',
  'tanker above 60 000 DWT',
  'very large crude carrier',
  'gas carrier',
  'bulk carrier',
  ...belted,
];

/** Gas carriers and the largest tankers berth as tankers do, passenger ships as ferries; other hulls are named for their type. */
export function typeOfHull(hull: string): string {
  const types = ['container', 'general cargo', 'bulk carrier'];
  if (['cruise ship', 'ferry', 'ro-ro ship'].includes(hull)) return 'ro-ro, ferry';
  if (hull.startsWith('tug')) return 'tug, workboat';
  return types.find((type) => hull.startsWith(type)) ?? 'tanker';
}

/** The tables the template is shipped with: published tables by the sources it names, and invented fenders and bents. */
export const shippedTables: Drawn['tables'] = {
  'fender.fenders': fromColumns({
    size: ['size 812', 'size 950', 'size 1111', 'size 1300', 'size 1521', 'size 1780'],
    H: [812, 950, 1111, 1300, 1521, 1780],
    E_rated: [241, 385, 616, 987, 1581, 2534],
    R_rated: [527, 721, 986, 1350, 1848, 2531],
    d_rated: [568, 665, 778, 910, 1065, 1246],
  }),
  'fender.performance': fromColumns({
    d: [0, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1],
    r: [0, 0.19, 0.38, 0.56, 0.71, 0.84, 0.93, 0.98, 1, 0.97, 0.91, 0.86, 0.85, 0.9, 1],
  }),
  'wharf.bents': fromColumns({
    bent: ['bent 1', 'bent 2', 'bent 3', 'bent 4', 'bent 5', 'bent 6', 'bent 7', 'bent 8'],
    s: [0, 6, 12, 18, 24, 30, 36, 42],
    k: [1, 1, 1, 1, 1, 1, 1, 1],
  }),
  'data.ships': fromColumns({
    name: [
      'container 10 000 DWT',
      'container 15 000 DWT',
      'container 20 000 DWT',
      'container 25 000 DWT',
      'container 30 000 DWT',
      'container 35 000 DWT',
      'container 40 000 DWT',
      'container 45 000 DWT',
      'container 50 000 DWT',
      'container 55 000 DWT',
      'container 60 000 DWT',
      'container 55 000 DWT, post-Panamax',
      'container 60 000 DWT, post-Panamax',
      'container 65 000 DWT, post-Panamax',
      'container 70 000 DWT, post-Panamax',
      'container 4 000 TEU',
      'container 12 000 TEU',
    ],
    DWT_t: [
      10000, 15000, 20000, 25000, 30000, 35000, 40000, 45000, 50000, 55000, 60000, 55000, 60000, 65000, 70000,
      43200, 157000,
    ],
    M_t: [
      13500, 20000, 27000, 33500, 40500, 47500, 54000, 61000, 68000, 75500, 83000, 76500, 84000, 92000,
      100000, 65006, 208000,
    ],
    L_OA_t: [130, 152, 174, 195, 210, 222, 237, 255, 267, 278, 290, 261, 268, 274, 280, 269, 397],
    L_BP_t: [124, 144, 165, 185, 200, 211, 225, 242, 253, 264, 275, 248, 255, 260, 266, 256, 376],
    B_t: [21.2, 23.7, 26.2, 28.5, 30, 32.2, 32.2, 32.2, 32.2, 32.2, 32.2, 38.3, 39.8, 41.2, 41.8, 32.2, 57],
    D_t: [7.3, 8.5, 9.2, 10.1, 10.7, 11.1, 11.7, 12.2, 12.5, 12.8, 13.2, 12.8, 13.2, 13.5, 13.8, 11.8, 15.5],
  }),
  'data.brolsma': fromColumns({
    M50: [
      1000, 2000, 3000, 4000, 5000, 10000, 20000, 30000, 40000, 50000, 100000, 200000, 300000, 400000, 500000,
    ],
    a: [
      0.179, 0.151, 0.136, 0.125, 0.117, 0.094, 0.074, 0.064, 0.057, 0.052, 0.039, 0.028, 0.022, 0.019, 0.017,
    ],
    b: [
      0.343, 0.296, 0.269, 0.25, 0.236, 0.192, 0.153, 0.133, 0.119, 0.11, 0.083, 0.062, 0.052, 0.045, 0.041,
    ],
    c: [
      0.517, 0.445, 0.404, 0.374, 0.352, 0.287, 0.228, 0.198, 0.178, 0.164, 0.126, 0.095, 0.08, 0.071, 0.064,
    ],
    d: [
      0.669, 0.577, 0.524, 0.487, 0.459, 0.377, 0.303, 0.264, 0.239, 0.221, 0.171, 0.131, 0.111, 0.099, 0.09,
    ],
    e: [
      0.865, 0.726, 0.649, 0.597, 0.558, 0.448, 0.355, 0.308, 0.279, 0.258, 0.201, 0.158, 0.137, 0.124, 0.115,
    ],
  }),
  'data.tcn': fromColumns({
    M_s: [2000, 5000, 10_000, 20_000, 40_000, 100_000, 200_000],
    v_s: [0.22, 0.15, 0.13, 0.11, 0.1, 0.09, 0.08],
  }),
  'data.is_speeds': fromColumns({
    M_to: [5000, 10_000, 100_000, 1_000_000],
    s_1: [0.75, 0.55, 0.4, 0.2],
    s_2: [0.6, 0.45, 0.3, 0.2],
    s_3: [0.45, 0.35, 0.2, 0.15],
    s_4: [0.25, 0.2, 0.15, 0.1],
    s_5: [0.2, 0.15, 0.1, 0.1],
  }),
  'data.abnormal': fromColumns({
    type: ['tanker', 'bulk carrier', 'container', 'general cargo', 'ro-ro, ferry', 'tug, workboat'],
    largest: [1.25, 1.25, 1.5, 1.75, 2, 2],
    smallest: [1.75, 1.75, 2, 1.75, 2, 2],
    C_lo: [0.76, 0.76, 0.5, 0.7, 0.5, 0.4],
    C_hi: [0.9, 0.9, 0.75, 0.88, 0.75, 0.95],
    x_o: [0.25, 0.25, 0.25, 0.25, 0.3, 0.25],
    M_L: [80_000, 80_000, 80_000, 10, 10, 10],
  }),
  'data.pressure': fromColumns({
    ship_kind: hulls,
    p_t: [400, 300, 250, 200, 400, 400, 300, 350, 150, 200, 200, 0, 0, 0, 0],
    M_lo: [10, 10, 10, 10, 10, 20_000, 10, 70_000, 200_000, 10, 10, 10, 10, 10, 10],
    M_hi: [
      40_000, 60_000, 90_000, 700_000, 30_000, 700_000, 85_000, 700_000, 700_000, 700_000, 700_000, 150_000,
      50_000, 100_000, 5000,
    ],
  }),
  'data.friction': fromColumns({
    pair: ['timber to steel', 'urethane to steel', 'steel to steel', 'rubber to steel', 'UHMW to steel'],
    μ_low: [0.4, 0.4, 0.25, 0.6, 0.1],
    μ_high: [0.6, 0.6, 0.25, 0.7, 0.2],
  }),
  'data.angles': fromColumns({
    θ_t: [0, 3, 5, 8, 10, 15, 20],
    AF_t: [1, 0.977, 0.951, 0.909, 0.883, 0.81, 0.652],
  }),
};
