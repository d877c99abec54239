import { numberType, type Type, textType, truthType } from '../../../src/language/index.ts';
import { powerDimension } from '../../../src/units/index.ts';
import { type Growth, grow, growCall, mayGive, type Place } from './grow.ts';
import type { Piece } from './piece.ts';
import { angle, anyMeasured, anyNumber, anyValue, date, dimensions, plain } from './quantities.ts';
import type { Random } from './random.ts';
import { signatureByName, signatures } from './signatures.ts';

/** The operators, by the names under which they are counted. */
export const operators = ['+', '-', '*', '/', '^', '&', '=', '<', 'unary -', '%', '√'] as const;

/** The functions with arguments whose kind matters, POWER and SERIES included. */
export const constrained: readonly string[] = [
  ...signatures
    .map(({ name }) => name)
    .filter((name) => !['PI', 'ROW', 'COUNT', 'ISBLANK', 'KNOWN'].includes(name)),
  'POWER',
  'SERIES',
];

/** A random piece whose outermost part is the named function or operator, with its type. */
export function growSubject(name: string, growth: Growth): { readonly piece: Piece; readonly type: Type } {
  for (let attempt = 0; attempt < 100; attempt += 1) {
    const type = typeFor(name, growth.random);
    const piece = growNamed(name, type, growth);
    if (piece) return { piece, type };
  }
  throw new Error(`no piece of ${name} grows here`);
}

function typeFor(name: string, random: Random): Type {
  if (name === 'POWER' || name === '^' || name === '√') return numberType(random.pick(dimensions));
  if (name === 'SERIES' || name === 'unary -') return anyNumber(random);
  if (name === '%') return plain;
  if (name === '&') return textType;
  if (name === '=' || name === '<') return truthType;
  if (name === '+' || name === '-') return anyMeasured(random);
  if (name === '*' || name === '/') return anyNumber(random);
  const result = signatureByName.get(name)?.result ?? '';
  const fixed: Readonly<Record<string, Type>> = { plain, angle, date, truth: truthType, text: textType };
  if (fixed[result]) return fixed[result];
  if (/^[VW]/.test(result)) return anyValue(random);
  if (/^[AB]/.test(result)) return anyMeasured(random);
  return result.length === 1 ? anyNumber(random) : numberType(random.pick(dimensions));
}

function growNamed(name: string, type: Type, growth: Growth): Piece | undefined {
  const { random } = growth;
  const one = (wanted: Type) => grow(wanted, growth);
  const signature = signatureByName.get(name);
  if (signature) return mayGive(signature, type, growth) ? growCall(signature, type, growth) : undefined;
  if (name === 'SERIES') return { kind: 'call', fn: name, args: [one(type), one(type), one(type)] };
  if (name === '&') return { kind: 'binary', op: name, args: [one(type), one(type)] };
  if (name === '=' || name === '<') {
    const sides = name === '=' ? anyValue(random) : anyMeasured(random);
    return { kind: 'compare', op: name, args: [one(sides), one(sides)] };
  }
  if (name === '%') return { kind: 'percent', args: [one(type)] };
  if (type.kind === 'point') {
    const gap = type.of === 'temperature' ? 'Θ' : type.of === 'date' ? 'T' : 'L';
    const difference = numberType({ key: gap, powers: [[gap, { n: 1, d: 1 }]] });
    return { kind: 'binary', op: name === '+' ? '+' : '-', args: [one(type), one(difference)] };
  }
  if (type.kind !== 'number') return undefined;
  if (name === 'unary -') return { kind: 'negate', args: [one(type)] };
  if (name === '√')
    return { kind: 'root', args: [one(numberType(powerDimension(type.dimension, { n: 2, d: 1 })))] };
  if (name === 'POWER' || name === '^') {
    const base = one(numberType(powerDimension(type.dimension, { n: 1, d: 2 })));
    if (name === '^') return { kind: 'power', exponent: '2', args: [base] };
    return { kind: 'call', fn: name, args: [base, { kind: 'number', value: 2, unit: '' }] };
  }
  if (name === '*' || name === '/') return { kind: 'binary', op: name, args: [one(type), one(plain)] };
  return { kind: 'binary', op: name === '+' ? '+' : '-', args: [one(type), one(type)] };
}

/** A formula of which a piece is a part, with the type the whole has. */
export function surround(
  piece: Piece,
  type: Type,
  growth: Growth,
): { readonly whole: Piece; readonly type: Type } {
  const { random } = growth;
  const other = () => grow(type, growth);
  const choices: (() => { whole: Piece; type: Type })[] = [
    () => ({ whole: piece, type }),
    () => ({
      whole: { kind: 'call', fn: 'IF', args: [grow(truthType, growth), piece, other()] },
      type,
    }),
    () => ({
      whole: { kind: 'call', fn: 'CHOOSE', args: [{ kind: 'number', value: 1, unit: '' }, other(), piece] },
      type,
    }),
  ];
  if (type.kind === 'number') {
    choices.push(
      () => ({ whole: { kind: 'binary', op: '+', args: [other(), piece] }, type }),
      () => ({ whole: { kind: 'call', fn: 'MAX', args: [piece, other()] }, type }),
      () => ({ whole: { kind: 'binary', op: '*', args: [piece, grow(plain, growth)] }, type }),
      () => ({ whole: { kind: 'negate', args: [piece] }, type }),
    );
    if (!type.angle)
      choices.push(() => ({
        whole: { kind: 'power', exponent: '2', args: [piece] },
        type: numberType(powerDimension(type.dimension, { n: 2, d: 1 })),
      }));
  }
  return random.pick(choices)();
}

/** A place a function can stand in: functions of rows only in a table. */
export function placeFor(name: string, random: Random): Place {
  if (/^(ABOVE|RUNNING|SERIES)/.test(name)) return { table: random.pick(['layers', 'rates']) };
  const table = random.pick([undefined, undefined, 'layers', 'rates']);
  return table === undefined ? {} : { table };
}
