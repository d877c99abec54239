import type { Cell, Verdict } from '../program.ts';
import type { Maybe } from './inputs.ts';

/** Results by their names. */
export type Names = Record<string, Cell | Verdict | readonly Cell[]>;

/** Results of one sheet. */
export function lines(sheet: string, of: Readonly<Record<string, Cell>>): Names {
  return Object.fromEntries(Object.entries(of).map(([name, value]) => [`${sheet}.${name}`, value]));
}

/** A demand held against a capacity. */
export function check(demand: Maybe, capacity: Maybe): Verdict {
  if (demand === null || capacity === null) return { verdict: 'refused' };
  const verdict = demand <= capacity ? 'holds' : 'fails';
  return { verdict, ...(demand > 0 && capacity > 0 && { utilisation: demand / capacity }) };
}

/** A check that there is something to judge by: it does not apply where that is nothing, and is refused where it is unknown. */
export function where(asked: Maybe, held: Verdict): Verdict {
  if (asked === null) return { verdict: 'refused' };
  return asked > 0 ? held : { verdict: 'does not apply' };
}
