import type { Verdict } from '../program.ts';
import type { Berth } from './berth.ts';
import { type FlatBerthing, workFlatBerthing } from './flat-berthing.ts';
import { aboveZero, type Inputs, judge, judgeBelow, ratio } from './values.ts';

/** The spacing of the fenders and the share of each bent. */
export interface Wharf {
  readonly numbers: Readonly<
    Record<
      | 'S_max'
      | 'C_S0'
      | 'R_B'
      | 'h_0'
      | 'h_c'
      | 'C'
      | 'S_c'
      | 's_B'
      | 'S_L'
      | 'R_BD'
      | 'b_t'
      | 'n_t'
      | 'R_w'
      | 'H_max'
      | 'H_pile'
      | 'H_min'
      | 'H_b'
      | 'Σk'
      | 'x_g'
      | 'e'
      | 'Σkr2'
      | 'ΣH'
      | 'N_s',
      number
    >
  >;
  readonly columns: Readonly<Record<'r' | 'H' | 'H_p' | 'H_f' | 'n_s', readonly number[]>>;
  readonly flat: FlatBerthing;
  readonly checks: Readonly<
    Record<
      | 'c_S'
      | 'c_hc'
      | 'c_H'
      | 'c_x'
      | 'c_n'
      | 'c_LS'
      | 'c_BS'
      | 'c_LBS'
      | 'c_RB'
      | 'c_RBD'
      | 'c_bS'
      | 'c_two',
      Verdict
    >
  >;
}

/** Works out spacing and bents; lengths in m, forces in kN. */
export function workWharf(inputs: Inputs, { ship, energy, fender, panel, absorber }: Berth): Wharf {
  const { number, text } = inputs;
  const [length, beam] = [number('wharf.L_S'), number('wharf.B_S')];
  const radius = bowRadius(length, beam);
  const isRubber = text('absorber.used') === 'none';
  // What is built stands between wharf and hull, and gives.
  const projection = isRubber ? fender.numbers.H_F / 1000 + number('wharf.e_0') : number('absorber.h_a');
  const pressed = projection - (isRubber ? fender.numbers.δ : absorber.numbers.d_a) / 1000;
  const clearance = (number('wharf.c_C') / 100) * projection;
  const spacing = number('wharf.S');
  // A bow is half a circle and no more; a hull that is at the wharf already has no chord.
  const bulge = clamp(pressed - clearance, radius);
  const byChord = chordOf(radius, bulge);
  const byShip = 0.15 * length;
  const greatest = Math.min(byChord, byShip);
  const shipRadius = bowRadius(ship.numbers.L_OA, ship.numbers.B);
  // The part of the bow that is pressed in is a segment of her circle; so many spacings in its chord, so many units at least.
  const reached = chordOf(shipRadius, clamp(fender.numbers.δ / 1000, shipRadius));
  const touching = number('panel.n_f') * Math.max(1, Math.floor(ratio(reached, spacing) + 1e-12));
  const idle: Verdict = { verdict: 'does not apply' };
  const alongWall = text('fender.system') !== 'dolphin';
  const shared: Verdict =
    isRubber && text('fender.system') === 'shared' ? judge(fender.numbers.n, touching) : idle;
  const { deck, ...bents } = workBents(inputs, isRubber ? fender.numbers.R_tot : absorber.numbers.R_a);
  const flat = workFlatBerthing(inputs, { ship, energy, fender, panel, absorber }, deck.bents, deck);
  return {
    ...bents,
    flat,
    columns: { ...bents.columns, H_f: flat.shares },
    numbers: {
      ...bents.numbers,
      S_max: greatest,
      // Where the gap is wider than the bow she passes between, all her half circle deep.
      C_S0: pressed - (spacing / 2 > radius ? radius : radius - Math.sqrt(radius ** 2 - (spacing / 2) ** 2)),
      R_B: radius,
      h_0: projection,
      h_c: pressed,
      C: clearance,
      S_c: byChord,
      s_B: bulge,
      R_BD: shipRadius,
      b_t: reached,
      n_t: touching,
      S_L: byShip,
    },
    checks: {
      ...bents.checks,
      c_S: alongWall ? judge(spacing, greatest) : idle,
      c_hc: alongWall ? judge(clearance, pressed) : idle,
      c_n: shared,
      c_LS: judge(length, ship.numbers.L_OA),
      c_BS: judge(beam, ship.numbers.B),
      c_LBS: judge(2 * beam, length),
      c_RB: judge(radius, allCurved(length, beam)),
      c_RBD: judge(shipRadius, allCurved(ship.numbers.L_OA, ship.numbers.B)),
      c_bS: judgeBelow(number('panel.b_p'), spacing),
    },
  };
}

/** Of a bow that is a circle through the stem and the widest frame; common practice, from memory. */
function bowRadius(length: number, beam: number): number {
  return (beam / 2 + ratio(length ** 2, 8 * beam)) / 2;
}

/** The chord of a circle that cuts off a segment of some depth. */
function chordOf(radius: number, depth: number): number {
  return 2 * Math.sqrt(depth * (2 * radius - depth));
}

/** A depth from nothing to the most there is. */
function clamp(depth: number, most: number): number {
  return Number.isNaN(depth) ? Number.NaN : Math.min(most, Math.max(depth, 0));
}

/** A hull that is one circle through stem, stern and the widest frame: no bow is flatter. */
function allCurved(length: number, beam: number): number {
  return ((length / 2) ** 2 + (beam / 2) ** 2) / aboveZero(beam);
}

/** A rigid deck on springs: each bent takes its part of the force, and of the moment about the centre of stiffness. */
function workBents(inputs: Inputs, reaction: number) {
  const { number, rows } = inputs;
  const bents = rows('wharf.bents').map((row) => ({ s: row.number('s'), k: row.number('k') }));
  const [far, near] = [Math.max(...bents.map(({ s }) => s)), Math.min(...bents.map(({ s }) => s))];
  const force = number('wharf.n_L') * reaction;
  const sum = (of: (bent: { readonly s: number; readonly k: number }) => number): number =>
    bents.reduce((total, bent) => total + of(bent), 0);
  const whole = bents.every(({ k }) => k >= 0) ? sum(({ k }) => k) : Number.NaN;
  const centre = ratio(
    sum(({ k, s }) => k * s),
    whole,
  );
  const eccentricity = number('wharf.x_R') - centre;
  const arms = bents.map(({ s }) => s - centre);
  const sumOfSquares = bents.reduce((total, { k }, index) => total + k * (arms[index] ?? Number.NaN) ** 2, 0);
  // Bents on one line do not hold a deck that is pushed beside it, nor does one that alone is stiff.
  const stiff = bents.filter(({ k }) => k > 0).map(({ s }) => s);
  const apart = Math.max(...stiff) > Math.min(...stiff);
  const second = apart ? sumOfSquares : Number.NaN;
  const turning = ratio(force, second);
  const shares = bents.map(
    ({ k }, index) => ratio(force * k, whole) + turning * eccentricity * k * (arms[index] ?? Number.NaN),
  );
  const [most, least] = [Math.max(...shares), Math.min(...shares)];
  // What a bent is pulled counts as what it is pushed.
  const hardest = Math.max(most, -least);
  const piles = number('wharf.n_p');
  // Rows that stand where another does, or by its side, share its part once more.
  const atPlace = bents.map(({ s }) => bents.filter((other) => Math.abs(other.s - s) < 1).length);
  const twice = atPlace.filter((rows) => rows > 1).length;
  return {
    numbers: {
      R_w: force,
      H_max: most,
      H_pile: hardest / piles,
      H_min: least,
      H_b: hardest,
      Σk: whole,
      x_g: centre,
      e: eccentricity,
      Σkr2: second,
      ΣH: shares.reduce((total, share) => total + share, 0),
      N_s: twice,
    },
    deck: { bents, whole, centre, second },
    columns: { r: arms, n_s: atPlace, H: shares, H_p: shares.map((share) => share / piles) },
    checks: {
      c_two: { verdict: twice > 0 ? 'fails' : 'holds' } as Verdict,
      c_H: judge(hardest, number('wharf.H_a')),
      c_x: judge(Math.abs(2 * number('wharf.x_R') - far - near), far - near),
    },
  };
}
