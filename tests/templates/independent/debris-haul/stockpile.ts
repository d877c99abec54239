import type { Drawn, Worked } from '../program.ts';
import { cell, num, part, sum, text, within } from './arithmetic.ts';
import type { Breaking } from './breaking.ts';
import type { Fleet } from './fleet.ts';
import type { Item, Quantities } from './quantities.ts';

/**
 * A pile at the angle of repose: a cone, a triangular bank, or such a bank with half a cone at each end; a bank that
 * would be lower than its set height is a cone (Nunnally, ch. 2; geometry). Lengths in m, pressure in kPa.
 */
export function workStockpile(
  drawn: Drawn,
  { items, loose, mass, heaviest }: Quantities,
  { breaking, fleet }: { readonly breaking: Breaking; readonly fleet: Fleet },
  dayHours: number,
): Worked {
  const { lines } = drawn;
  const line = (name: string) => num(lines[`stockpile.${name}`]);
  const share = part(lines['stockpile.k_p']);
  const slope = Math.tan((line('φ') * Math.PI) / 180);
  const volume = share * loose;
  const cone = Math.cbrt((3 * volume * slope ** 2) / Math.PI);
  const shape = text(lines['stockpile.shape']);
  const heights: Readonly<Record<string, number>> = {
    cone,
    'set length': Math.sqrt((volume * slope) / line('L_p')),
    'set height': Math.min(line('H_p'), cone),
  };
  const height = heights[shape] ?? Number.NaN;
  const base = (2 * height) / slope;
  const ends = (Math.PI * height ** 3) / (3 * slope ** 2);
  const ridge =
    shape === 'cone'
      ? 0
      : shape === 'set length'
        ? line('L_p')
        : line('H_p') >= cone
          ? 0
          : (volume - ends) / (height ** 2 / slope);
  const isOpen = shape === 'set length';
  const length = isOpen ? ridge : ridge + base;
  const covered = isOpen ? base * ridge : base * ridge + (Math.PI * base ** 2) / 4;
  const needed = (length + 2 * line('w_s')) * (base + 2 * line('w_s'));
  const gravity = num(lines['basis.g'], 9.80665);
  const pressure = (height * heaviest * gravity) / 1000;
  const days = volume / (fleet.output * dayHours);
  const known: Worked = {
    'stockpile.V_p': cell(volume),
    'stockpile.V_g': cell(volume),
    'stockpile.M_p': cell(share * mass),
    ...workWaiting(drawn, items, { breaking, fleet, dayHours }, volume),
  };
  // Whether a pile of nothing has a shape is left open.
  if (volume === 0) {
    const none = { verdict: 'does not apply' } as const;
    return { ...known, 'stockpile.c_H': none, 'stockpile.c_A': none, 'stockpile.c_p': none };
  }
  return {
    ...known,
    'stockpile.H_c': cell(cone),
    'stockpile.H': cell(height),
    'stockpile.B': cell(base),
    'stockpile.L_r': cell(ridge),
    'stockpile.L_t': cell(length),
    'stockpile.A_f': cell(covered),
    'stockpile.A_r': cell(needed),
    'stockpile.p_m': cell(pressure),
    ...(fleet.hauls && { 'stockpile.D_p': cell(days) }),
    'stockpile.c_H': within(height, line('H_m')),
    'stockpile.c_A': within(needed, line('A_a')),
    'stockpile.c_p': within(pressure, line('p_a')),
  };
}

/**
 * What lies broken and not hauled, lcm: at an even pace most of it lies there when hauling begins or when breaking ends; in
 * turn, all of it. What needs no breaking waits in its place.
 */
function workWaiting(
  { lines }: Drawn,
  items: readonly Item[],
  {
    breaking,
    fleet,
    dayHours,
  }: { readonly breaking: Breaking; readonly fleet: Fleet; readonly dayHours: number },
  pile: number,
): Worked {
  const all = sum(items.map(({ hauled, lines: named }) => (named > 0 ? hauled : 0 * hauled)));
  const lag = num(lines['cost.D_l']) * dayHours;
  const { hours } = breaking;
  const atStart = hours > lag ? (all * lag) / hours : all + 0 * (hours + lag);
  const hauled = fleet.output * Math.max(0, hours - lag);
  const atEnd = Math.max(0, all - hauled);
  const most = text(lines['cost.overlap']) === 'in turn' ? all : Math.max(0, atStart, atEnd);
  const isNothing = pile === 0 && most > 0;
  return {
    'stockpile.V_w': cell(all),
    'stockpile.V_1': cell(atStart),
    'stockpile.V_n': cell(most),
    'stockpile.c_k': isNothing ? { verdict: 'fails' } : within(most, pile),
  };
}
