import type { Cell, Random } from '../program.ts';
import type { Size } from './draw-ship.ts';

type Lines = Readonly<Record<string, Cell>>;

/** Draws the other effects, the passing ship, and the rule of the nominal load. */
export function drawOthers(random: Random, { length, breadth }: Size): Lines {
  const hasOther = random.chance(0.5);
  const off = hasOther ? random.between(-0.2, 1) * length * 8 : 0;
  const foot = 0.3048;
  const clear = random.chance(0.1)
    ? random.of([500 * foot * 0.9999, 2 * breadth * 1.0001])
    : random.between(10, 170);
  return {
    'load.X_o': hasOther && random.chance(0.7) ? random.between(-1, 1) * length * 2 : 0,
    'load.Y_o': off,
    'load.M_o': hasOther && random.chance(0.7) ? off * length * random.between(-0.2, 0.2) : 0,
    'load.rank': random.of(['off the berth', 'off the berth', 'along the berth', 'resultant']),
    'load.s_p': clear,
    'load.V_p': random.between(0, 12),
    'load.std': random.of(['EAU older', 'EAU 2004', 'BS', 'IS', 'Thoresen', 'OCDI']),
    'load.strong': random.of(['no', 'yes']),
  };
}

/** Draws the single line: its links, its sag and its turns. */
export function drawRope(random: Random): Lines {
  const strength = random.over(100, 3000);
  const span = random.over(5, 300);
  const hold = random.over(0.05, 1);
  return {
    'rope.MBL_1': strength,
    'rope.lim_1': random.chance(0.3) ? random.of([50, 55, 60]) : random.between(20, 100),
    'rope.SWL_1': random.chance(0.01) ? 0 : strength * random.between(0.3, 4),
    'rope.n_1': random.chance(0.02) ? 2.5 : random.whole(1, 6),
    'rope.l': span,
    'rope.d_h': random.chance(0.6) ? 0 : span * random.between(0.01, 0.6),
    'rope.f_g': random.chance(0.01)
      ? 0
      : random.chance(0.15)
        ? span * random.between(0.2, 1.5)
        : span * random.over(0.002, 0.2),
    'rope.w_m': random.over(0.2, 30),
    'rope.T_h': hold,
    'rope.T_l': random.chance(0.05) ? hold * random.of([0.5, 1]) : hold * random.over(1.2, 500),
    'rope.n_t': random.chance(0.1) ? 0.1 : random.between(0.5, 5),
    'rope.n_2': random.chance(0.1) ? 0.1 : random.between(0.5, 5),
    'rope.T_3': hold * random.over(0.5, 800),
  };
}
