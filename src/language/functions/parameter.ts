import { type NumberType, numberType, type Type } from '../type.ts';
import type { Parameter, Taking } from './entry.ts';

type Extras = Pick<Parameter, 'optional' | 'repeats' | 'picked'>;

export const plain: Taking = { kind: 'plain' };
export const angle: Taking = { kind: 'angle' };
export const number: Taking = { kind: 'number' };
export const truth: Taking = { kind: 'truth' };
export const text: Taking = { kind: 'text' };
export const date: Taking = { kind: 'date' };
export const any: Taking = { kind: 'any' };
/** Numbers of one dimension. */
export const like: Taking = { kind: 'like', letter: 'a' };
/** Numbers of one dimension or points of one kind. */
export const likePoints: Taking = { kind: 'like', letter: 'a', points: true };
/** Values of one kind, texts and truth values too. */
export const likeAny: Taking = { kind: 'like', letter: 'a', points: true, texts: true };

/** An elementwise parameter. */
export function each(name: string, takes: Taking, extras: Extras = {}): Parameter {
  return { name, takes, role: 'each', ...extras };
}
/** A parameter whose rows are gathered. */
export function column(name: string, takes: Taking, extras: Extras = {}): Parameter {
  return { name, takes, role: 'column', ...extras };
}
/** A literal option, one of the choices if there are any. */
export function option(name: string, choices?: readonly string[], extras: Extras = {}): Parameter {
  return {
    name,
    takes: choices ? { kind: 'option', choices } : { kind: 'option' },
    role: 'option',
    ...extras,
  };
}

/** The common type of arguments already found alike: the literal 0 gives way to the others. */
export function common(types: readonly Type[]): Type {
  const settled = types.find((type) => !(type.kind === 'number' && type.zero)) ?? types[0];
  if (!settled) throw new Error('a function that gives the type of its arguments has none');
  return settled.kind === 'number' ? numberType(settled.dimension, settled.angle) : settled;
}

/** The numbers among the types; the parameters have seen to it that all are. */
export function numbers(types: readonly Type[]): readonly NumberType[] {
  return types.filter((type): type is NumberType => type.kind === 'number');
}
