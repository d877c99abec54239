import { expect, test } from 'vitest';
import { type NameCandidate, nearNames } from '../../src/language/index.ts';

const own = (name: string, fits = false): NameCandidate => ({ name, fits });
const other = (name: string, fits = false): NameCandidate => ({
  name,
  fits,
  sheet: name.split('.')[0] ?? '',
});

test.each([
  ['gamma_i', [own('gamma_1'), own('γ_i'), own('γ')], ['γ_i', 'gamma_1']],
  ['gamma_i', [own('q'), other('loads.γ_i')], ['loads.γ_i']],
  ['Gamma_i', [own('γ_i')], ['γ_i']],
  ['g_i', [own('q_i'), own('γ_i')], ['γ_i', 'q_i']],
  ['w', [own('ω')], ['ω']],
  ['f_m', [own('A_m'), own('s_m'), own('f_max')], ['f_max', 'A_m', 's_m']],
  ['f_m', [other('rail.f_max'), own('f_mt')], ['f_mt', 'rail.f_max']],
  ['a', [other('apron.F'), own('α'), other('apron.α')], ['α', 'apron.α']],
  ['t_dek', [own('t_deh'), own('t_deck', true)], ['t_deck', 't_deh']],
  ['t_dek', [other('b.t_dek'), own('t_deck', true)], ['b.t_dek', 't_deck']],
  ['constructor', [own('x')], []],
])('%s among %o', (written, candidates, near) => {
  expect(nearNames(written, candidates)).toEqual(near);
});
