import { expect, test } from 'vitest';
import { verdicts } from './verdicts.ts';

/** The checks that rest on how far the fender gives way and how hard it pushes back. */
const onTheFender = ['fender.c_R', 'panel.c_p', 'panel.c_s', 'panel.c_w', 'wharf.c_S', 'wharf.c_H'] as const;

test.each([
  ['a fender that is too small', { fender_size: 'size 950' }],
  ['a fender that is far too small', { fender_size: 'size 812' }],
  ['a ship that comes too fast', { v_stated: '0.13 m/s' }],
  ['the lesser reaction agreed', { fender_size: 'size 950', R_basis: 'design energy' }],
])('%s leaves no check of the fender template that holds on its reaction', (_, values) => {
  expect(verdicts('fender-energy', { lines: values }, ['fender.c_E'])).toEqual(['fender.c_E: fails']);
  expect(verdicts('fender-energy', { lines: values }, onTheFender)).toEqual(
    onTheFender.map((name) => `${name}: no value`),
  );
});

test('a fender that takes the energy has all of them', () => {
  expect(verdicts('fender-energy', {}, ['fender.c_E', ...onTheFender])).toEqual(
    ['fender.c_E', ...onTheFender].map((name) => `${name}: passes`),
  );
});

test('the demo book compares no reaction of a fender that is too small', () => {
  const names = ['fender.c_E', 'fender.c_R', 'fender.c_h', 'fender.c_S'];
  expect(verdicts('demo', { lines: { 'fender.size_of': '1485 soft' } }, names)).toEqual([
    'fender.c_E: fails',
    'fender.c_R: no value',
    'fender.c_h: no value',
    'fender.c_S: no value',
  ]);
});

test('where no depth of the boring meets the demand, no pile is long enough', () => {
  const lines = ['depth.c_found', 'depth.c_len', 'depth.L_n', 'depth.L_m'];
  expect(verdicts('pile-bearing', { lines: { s_p: '60 ft' } }, lines)).toEqual([
    'depth.c_found: fails',
    'depth.c_len: no value',
    'depth.L_n: no value',
    'depth.L_m: no value',
  ]);
  expect(
    verdicts('demo', { lines: { 'wharf.s_b': '30 ft' } }, ['waterside.c_found', 'waterside.c_len']),
  ).toEqual(['waterside.c_found: fails', 'waterside.c_len: no value']);
});
