import type { Hands } from './hands.ts';
import type { Chance } from './random.ts';
import type { Seen } from './seen.ts';
import type { Outcome, State } from './state.ts';

/** One step as it can be done again: its kind, and what it is done with. */
export interface Step {
  readonly kind: string;
  readonly args: unknown;
}

/** A kind of step: how often it is taken, with what, how it is done, and how things may stand after it. */
export interface Kind<Args> {
  readonly name: string;
  /** How likely it is beside the others, as things stand. */
  readonly weight: (seen: Seen, state: State) => number;
  /** What it is done with; undefined where it cannot be done now. */
  readonly draw: (seen: Seen, chance: Chance, state: State) => Args | undefined;
  /** Does it; false where it could not be done, and nothing was. */
  readonly perform: (hands: Hands, args: Args, seen: Seen) => Promise<boolean>;
  readonly expect: (state: State, args: Args, before: Seen, after: Seen) => readonly Outcome[];
}

/** A kind among others, whose steps come back with what it drew. */
export function kindOf<Args>(kind: Kind<Args>): Kind<unknown> {
  return kind as Kind<unknown>;
}

/** Whether something was typed that is not in the book yet. */
export function isTyping({ draft }: State): boolean {
  return draft?.typed === true;
}

/** Whether keys go to the cells of the page. */
export function isOnCells(seen: Seen): boolean {
  return (
    !seen.editor && seen.onPage && seen.place !== undefined && !seen.overview && !seen.dialog && !seen.menu
  );
}
