import type { Unit } from '../../units/index.ts';
import type { Amount } from './amount.ts';

/** The kinds of numbers a sketch takes, each with an example unit of its dimension and its name in a sentence. */
export const quantities = {
  length: { unit: 'm', called: 'a length' },
  level: { unit: 'm', called: 'a level or a length' },
  angle: { unit: 'rad', called: 'an angle' },
  speed: { unit: 'm/s', called: 'a speed' },
  force: { unit: 'N', called: 'a force' },
  moment: { unit: 'N·m', called: 'a moment' },
  stress: { unit: 'Pa', called: 'a pressure' },
  time: { unit: 's', called: 'a time' },
  plain: { unit: '', called: 'a plain number' },
} as const;

/** A kind of number. */
export type QuantityKind = keyof typeof quantities;

/** What a sketch takes for one of its roles: one number, a column of numbers, or a column of texts or truths. */
export interface Role {
  readonly holds: 'amount' | 'amounts' | 'texts';
  readonly of: QuantityKind | 'text';
  readonly needed: boolean;
  /** What it is, in a sentence: `the length of the ship`. */
  readonly what: string;
}

/** A column of numbers: SI, NaN where a row has no value. */
export interface Amounts {
  readonly id: string;
  readonly name: string;
  readonly label: string;
  readonly unit: Unit;
  readonly values: readonly number[];
}
/** A column of texts: undefined where a row has none. */
export interface Texts {
  readonly id: string;
  readonly name: string;
  readonly label: string;
  readonly values: readonly (string | undefined)[];
}

interface Held {
  readonly amount: Amount;
  readonly amounts: Amounts;
  readonly texts: Texts;
}

/** The roles of a sketch, by the name the book gives them. */
export type Roles = Readonly<Record<string, Role>>;

/** What was read for each role; a role that is not needed may have nothing. */
export type CellsOf<R extends Roles> = {
  readonly [K in keyof R]: R[K]['needed'] extends true
    ? Held[R[K]['holds']]
    : Held[R[K]['holds']] | undefined;
};

/** A number that is needed. */
export function needed<K extends QuantityKind>(of: K, what: string) {
  return { holds: 'amount', of, needed: true, what } as const satisfies Role;
}
/** A number that is drawn where there is one. */
export function wanted<K extends QuantityKind>(of: K, what: string) {
  return { holds: 'amount', of, needed: false, what } as const satisfies Role;
}
/** A column of numbers that is needed. */
export function neededColumn<K extends QuantityKind>(of: K, what: string) {
  return { holds: 'amounts', of, needed: true, what } as const satisfies Role;
}
/** A column of numbers that is drawn where there is one. */
export function wantedColumn<K extends QuantityKind>(of: K, what: string) {
  return { holds: 'amounts', of, needed: false, what } as const satisfies Role;
}
/** A column of texts that is needed. */
export function neededTexts(what: string) {
  return { holds: 'texts', of: 'text', needed: true, what } as const satisfies Role;
}
/** A column of texts that is shown where there is one. */
export function wantedTexts(what: string) {
  return { holds: 'texts', of: 'text', needed: false, what } as const satisfies Role;
}
