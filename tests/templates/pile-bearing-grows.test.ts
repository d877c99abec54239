import { expect, test } from 'vitest';
import { pileBearing } from './independent/pile-bearing.ts';
import type { Drawn } from './independent/program.ts';
import { line, makeWorse, type Worse } from './worse.ts';

const seed = 20_261_129;
const compression = ['pile.c_comp', 'loads.c_FSc'];
const uplift = ['pile.c_up', 'loads.c_FSt'];
const section = ['loads.c_str', 'loads.c_buck'];

/** Each way to make a pile worse, and the checks that may not turn from failing to holding. */
const worse: readonly Worse[] = [
  line('loads.w_c', 1.4, [...compression, ...section]),
  line('loads.w_s', 1.4, [...compression, ...section]),
  line('loads.q_l', 1.6, [...compression, ...section]),
  line('loads.u_s', 1.4, [...uplift, 'loads.c_ten']),
  line('loads.φ_x', 0.7, compression),
  line('loads.φ_g', 0.7, ['loads.c_block']),
  line('loads.φ_xt', 0.7, uplift),
  line('pile.η_g', 0.9, compression),
  line('pile.η_t', 0.9, uplift),
  line('pile.r_clay', 0.7, uplift),
  line('pile.r_sand', 0.7, uplift),
  line('loads.f_y', 0.8, section),
  line("loads.f'_c", 0.8, section),
  line('loads.K_e', 1.3, section),
  line('loads.n_b', 1.3, section),
  line('pile.t', 0.8, ['pile.c_wall', 'pile.c_left', 'loads.c_Dt', 'loads.c_ten', ...section]),
  line('pile.X_g', 0.9, ['loads.c_block']),
  line('pile.life', 1.2, ['pile.c_left', ...section]),
  { name: 'weaker ground', to: weaken, checks: [...compression, ...uplift, 'depth.c_found', 'depth.c_len'] },
];

// In ground that hangs on the pile less friction is less load; and in these two rules friction falls while strength grows.
const uneven = ['USACE', 'linear 25-70'];

function weaken(drawn: Drawn): Drawn {
  const layers = drawn.tables['pile.layers'] ?? [];
  const { 'pile.z_n': drag, 'pile.clay_rule': rule } = drawn.lines;
  const isUneven = [rule, ...layers.map((layer) => layer.rule)].some((one) => uneven.includes(String(one)));
  if (drag !== 0 || isUneven) return drawn;
  const less = (cell: string | number | null | undefined): string | number | null =>
    typeof cell === 'number' ? cell * 0.8 : (cell ?? null);
  const weaker = layers.map((layer) => ({
    ...layer,
    s_u1: less(layer.s_u1),
    s_u2: less(layer.s_u2),
    f_in: less(layer.f_in),
    q_in: less(layer.q_in),
    β_in: less(layer.β_in),
  }));
  return { ...drawn, tables: { ...drawn.tables, 'pile.layers': weaker } };
}

test('a pile made worse turns no check from failing to holding', { timeout: 240_000 }, () => {
  console.log(`a pile made worse: draws from seed ${seed}`);
  const { turned, tried } = makeWorse(pileBearing, worse, { draws: 200, seed });
  expect(turned).toEqual([]);
  expect(tried.size).toBe(worse.length);
});
