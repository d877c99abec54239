import { expect, test } from 'vitest';
import { templateBook } from '../../src/cli/books.ts';
import { lineNamed, type Notebook, openNotebook } from '../../src/notebook/index.ts';
import { enterDrawn } from './independent/enter.ts';
import { fenderEnergy } from './independent/fender-energy.ts';
import type { Drawn } from './independent/program.ts';
import { randomFrom } from './independent/random.ts';

const seed = 20_261_129;
const book = templateBook('fender-energy');
const onTheEnergy = ['fender.c_E', 'fender.c_R', 'panel.c_p', 'wharf.c_S', 'wharf.c_H', 'absorber.c_l'];

/** Each way to make a berth worse, by the factor on a line, and the checks that may not turn from failing to holding. */
const worse: readonly (readonly [line: string, factor: number, checks: readonly string[]])[] = [
  ['energy.v_stated', 1.3, onTheEnergy],
  ['energy.C_S', 1.2, onTheEnergy],
  ['energy.C_g', 1.2, onTheEnergy],
  ['energy.γ_E', 1.5, [...onTheEnergy, 'energy.c_high']],
  ['ship.D_own', 1.1, ['ship.c_keel']],
  ['fender.tol', 1.5, ['fender.c_E', 'fender.c_R', 'panel.c_p', 'panel.c_s', 'panel.c_w', 'wharf.c_H']],
  ['fender.TF_min', 0.8, ['fender.c_E']],
  ['fender.AG_min', 0.8, ['fender.c_E', 'wharf.c_S']],
  ['fender.TF_max', 1.3, ['fender.c_R', 'panel.c_p', 'panel.c_s', 'panel.c_w', 'wharf.c_H']],
  ['fender.R_lim', 0.7, ['fender.c_R']],
  ['panel.b_p', 0.8, ['panel.c_p']],
  ['panel.f_S', 0.8, ['panel.c_p', 'panel.c_h']],
  ['panel.e_b', 1.5, ['panel.c_p']],
  ['panel.W_p', 2, ['panel.c_w']],
  ['panel.SF_c', 1.5, ['panel.c_s', 'panel.c_w']],
  ['panel.MBL', 0.7, ['panel.c_s', 'panel.c_w']],
  ['wharf.S', 1.3, ['wharf.c_S']],
  ['wharf.c_C', 1.5, ['wharf.c_S']],
  ['wharf.n_L', 1.3, ['wharf.c_H']],
  ['wharf.H_a', 0.7, ['wharf.c_H']],
  ['absorber.t_w', 0.7, ['absorber.c_l']],
  ['absorber.t_w', 1.5, ['absorber.c_bore']],
  ['absorber.σ', 0.7, ['absorber.c_l']],
  ['absorber.b_r', 0.7, ['absorber.c_l']],
  ['absorber.a_l', 1.3, ['absorber.c_a']],
];

test('a berth made worse turns no check from failing to holding', { timeout: 240_000 }, () => {
  console.log(`a berth made worse: draws from seed ${seed}`);
  const notebook = openNotebook(book);
  const turned: string[] = [];
  const failing = new Map<string, number>();
  for (let draw = 0; draw < 120; draw += 1) {
    const random = randomFrom(seed + draw);
    const drawn = fenderEnergy.draw(random);
    const before = stands(notebook, drawn);
    for (const [line, factor, checks] of [random.of(worse), random.of(worse), random.of(worse)]) {
      const value = drawn.lines[line];
      if (typeof value !== 'number') continue;
      const after = stands(notebook, { ...drawn, lines: { ...drawn.lines, [line]: value * factor } });
      for (const check of checks) {
        if (before(check) !== 'fails') continue;
        failing.set(line, (failing.get(line) ?? 0) + 1);
        if (after(check) === 'holds') turned.push(`draw ${draw}: ${check} holds with ${factor} ${line}`);
      }
    }
  }
  expect(turned).toEqual([]);
  expect([...failing.keys()].length).toBeGreaterThanOrEqual(new Set(worse.map(([line]) => line)).size - 2);
});

/** How each check stands with what was drawn; all of them are read before the inputs are taken back. */
function stands(notebook: Notebook, drawn: Drawn): (check: string) => string | undefined {
  const applied = notebook.apply(enterDrawn(book, fenderEnergy, drawn, randomFrom(seed)));
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  const names = new Set(worse.flatMap(([, , checks]) => checks));
  const found = new Map(
    [...names].map((name) => {
      const line = lineNamed(notebook.model, name);
      if (!line.ok) throw new Error(`there is no check ${name}`);
      const verdict = notebook.verdict(line.value.id);
      return [name, verdict && (verdict.holds ? 'holds' : 'fails')] as const;
    }),
  );
  const undone = notebook.apply(applied.value.inverse);
  if (!undone.ok) throw new Error(undone.problems[0]?.message);
  return (check) => found.get(check);
}
