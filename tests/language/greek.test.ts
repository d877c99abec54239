import { expect, test } from 'vitest';
import { spelledOut, withGreek } from '../../src/language/index.ts';

test('Greek letters are written out and back', () => {
  expect(spelledOut('γ_w')).toBe('gamma_w');
  expect(spelledOut('Δ_max')).toBe('Delta_max');
  expect(spelledOut('f_y')).toBe('f_y');
  for (const name of ['α', 'Ω_b1', 'λ_x', 'φ', 'q_μ']) expect(withGreek(spelledOut(name))).toBe(name);
});

test('only whole words are letters', () => {
  expect(withGreek('gamma_w')).toBe('γ_w');
  expect(withGreek('rho2')).toBe('ρ2');
  expect(withGreek('etage')).toBe('etage');
  expect(withGreek('beam_eta')).toBe('beam_η');
});
