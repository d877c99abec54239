import { expect, test } from 'vitest';
import { type Entered, verdicts } from '../verdicts.ts';

const onTheCurve = [
  'fender.c_R',
  'fender.c_r',
  'fender.c_q',
  'panel.c_p',
  'panel.c_s',
  'wharf.c_S',
  'wharf.c_H',
];
const onTheEnergy = ['fender.c_E', 'fender.c_R', 'panel.c_p', 'wharf.c_H', 'absorber.c_l'];

const curve = (...points: readonly (readonly [number, number])[]): Entered => ({
  tables: { performance: points.map(([d, r]) => ({ d: String(d), r: String(r) })) },
});
const bents = (...places: readonly string[]): Entered => ({
  tables: { bents: places.map((s, row) => ({ bent: `bent ${row + 1}`, s, k: '1' })) },
});

const refused: readonly (readonly [string, Entered, readonly string[]])[] = [
  ['a curve that ends before the rated deflection', curve([0, 0], [0.7, 1]), onTheCurve],
  ['a curve that goes on beyond it', curve([0, 0], [1, 1], [1.2, 1.5]), onTheCurve],
  ['a curve that begins on the way', curve([0.1, 0.3], [1, 1]), onTheCurve],
  ['a curve written from its end', curve([1, 1], [0.5, 0.9], [0, 0]), onTheCurve],
  ['a curve of one row', curve([1, 1]), onTheCurve],
  [
    'a displacement below the curves',
    { lines: { M_own: '900 t', speed_from: 'Brolsma curve' } },
    onTheEnergy,
  ],
  [
    'a deadweight beyond its rule',
    { lines: { particulars: 'own ship, by OCDI', DWT: '10,000 t' } },
    [...onTheEnergy, 'ship.c_block', 'ship.c_fill'],
  ],
  ['an angle beyond the table', { lines: { α: '21 deg' } }, ['fender.c_E', 'fender.c_R', 'panel.c_p']],
  [
    'a partial factor that nobody gave',
    { lines: { safety: 'partial energy factor' } },
    ['energy.c_low', 'energy.c_high', ...onTheEnergy],
  ],
  [
    'bevels wider than the panel',
    { lines: { b_p: '1 m', e_b: '0.6 m', h_p: '1 m', e_h: '0.6 m' } },
    ['panel.c_p'],
  ],
  ['a hull below the panel', { lines: { f_S: '0 m', z_LW: 'El. -2 m CD' } }, ['panel.c_p']],
  ['a chain that does not reach', { lines: { L_s: '1 m', L_w: '0.9 m' } }, ['panel.c_s', 'panel.c_w']],
  ['bents on one line', bents('6.1 m', '6.1 m', '6.1 m'), ['wharf.c_H']],
  ['one bent', bents('6 m'), ['wharf.c_H']],
  [
    'bodies that draw apart',
    { lines: { E_from: 'two floating bodies', u_1: '0.1 m/s', u_2: '0.15 m/s' } },
    ['absorber.c_l'],
  ],
  ['a wall thicker than the pipe', { lines: { t_w: '800 mm' } }, ['absorber.c_l']],
  ['a pipe without a wall', { lines: { t_w: '0 mm' } }, ['absorber.c_l']],
  ['a load beyond the span', { lines: { support: 'simple', a_l: '21 m' } }, ['absorber.c_l']],
  ['a load over the support', { lines: { support: 'simple', a_l: '0 m' } }, ['absorber.c_l']],
  ['a fender without a reaction', { lines: { R_RPD: '0 kN' } }, ['fender.c_q']],
];

test.each(refused)('%s leaves no check that rests on it', (_, entered, names) => {
  // Of rubber fenders and of piles only the one that is chosen is judged.
  const isOfPiles = (name: string): boolean => name.startsWith('absorber.');
  const withPiles = { ...entered, lines: { 'absorber.used': 'fender piles', ...entered.lines } };
  const [ofPiles, others] = [names.filter(isOfPiles), names.filter((name) => !isOfPiles(name))];
  const found = [
    ...(others.length > 0 ? verdicts('fender-energy', entered, others) : []),
    ...(ofPiles.length > 0 ? verdicts('fender-energy', withPiles, ofPiles) : []),
  ];
  expect(found).toEqual([...others, ...ofPiles].map((name) => `${name}: no value`));
});

test('none of the fenders on offer is picked by a curve that is none', () => {
  expect(verdicts('fender-energy', curve([0, 0], [0.7, 1]), ['fender.pick', 'fender.n_ok'])).toEqual([
    'fender.pick: no value',
    'fender.n_ok: no value',
  ]);
});

test('a projection that leaves the bow no room fails at any spacing', () => {
  const squeezed = { lines: { c_C: '50 %', e_0: '0 m', S: '1 m' } };
  expect(verdicts('fender-energy', squeezed, ['wharf.S_c', 'wharf.c_S', 'wharf.c_hc'])).toEqual([
    'wharf.S_c: a value',
    'wharf.c_S: fails',
    'wharf.c_hc: fails',
  ]);
});
