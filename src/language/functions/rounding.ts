import { plainType } from '../type.ts';
import type { FunctionEntry, Lower } from './entry.ts';
import { common, each, like, plain } from './parameter.ts';
import {
  awayTo,
  ceilingTo,
  floorTo,
  lowerRemainder,
  lowerRounded,
  nearestTo,
  remainderOf,
  toDigits,
  truncTo,
} from './rounding-rule.ts';

type Kind = Parameters<typeof lowerRounded>[0];
type Example = FunctionEntry['example'];

const stepRefusal = () => ({ words: 'the step is zero', argument: 1 });

/** Rounding to a step of the same dimension; a plain number may leave the step out, which is then 1. */
function toStep(
  name: string,
  kind: Kind,
  round: (x: number, step: number) => number,
  help: string,
  example: Example,
): FunctionEntry {
  const lower: Lower = ([x, step], _, __, tools) =>
    step === undefined
      ? lowerRounded(kind, `${x}`, tools)
      : `(${lowerRounded(kind, `${x}/${step}`, tools)}*${step})`;
  return {
    name,
    group: 'rounding',
    parameters: [each('x', like), each('step', like, { optional: true })],
    gives: (types) => {
      const type = common(types);
      const needsStep =
        types.length === 1 && type.kind === 'number' && (type.dimension.key !== '' || type.angle);
      return needsStep ? 'a quantity is rounded to a step: give one, such as 5 ft' : type;
    },
    evaluate: {
      kind: 'each',
      of: (x, step = 1) => (step === 0 ? Number.NaN : round(x, Math.abs(step))),
      refuse: stepRefusal,
    },
    lower: (eaches, ...rest) =>
      lower(
        eaches.map((part, at) => (at === 1 ? `ABS(${part})` : part)),
        ...rest,
      ),
    help,
    example,
  };
}

/** Rounding a plain number to decimals. */
function byDigits(
  name: string,
  kind: Kind,
  round: (x: number, step: number) => number,
  help: string,
  example: Example,
): FunctionEntry {
  return {
    name,
    group: 'rounding',
    parameters: [each('x', plain), each('digits', plain, { optional: true })],
    gives: () => plainType,
    evaluate: {
      kind: 'each',
      of: (x, digits = 0) =>
        Number.isInteger(digits) && Math.abs(digits) <= 15 ? toDigits(round, x, digits) : Number.NaN,
      refuse: () => ({ words: 'the digits must be a whole number from -15 to 15', argument: 1 }),
    },
    lower: ([x, digits], _, __, tools) => {
      if (digits === undefined) return lowerRounded(kind, `${x}`, tools);
      const scale = `${tools.constant(10)}^${digits}`;
      const value = `${lowerRounded(kind, `${x}*${scale}`, tools)}/${scale}`;
      const odd = `ABS(${digits})>${tools.constant(15)}`;
      return `IF(${digits}=INT(${digits}),IF(${odd},${tools.refused},${value}),${tools.refused})`;
    },
    help,
    example,
  };
}

export const rounding: readonly FunctionEntry[] = [
  byDigits('ROUND', 'nearest', nearestTo, 'A plain number to so many decimals, halves away from zero.', {
    formula: 'ROUND(2.675; 2)',
    value: 2.68,
  }),
  byDigits('ROUNDUP', 'away', awayTo, 'A plain number to so many decimals, away from zero.', {
    formula: 'ROUNDUP(-2.21; 1)',
    value: -2.3,
  }),
  byDigits('ROUNDDOWN', 'trunc', truncTo, 'A plain number to so many decimals, towards zero.', {
    formula: 'ROUNDDOWN(-2.29; 1)',
    value: -2.2,
  }),
  byDigits('TRUNC', 'trunc', truncTo, 'A plain number cut to so many decimals.', {
    formula: 'TRUNC(7.99)',
    value: 7,
  }),
  {
    name: 'INT',
    group: 'rounding',
    parameters: [each('x', plain)],
    gives: () => plainType,
    evaluate: { kind: 'each', of: (x) => floorTo(x, 1) },
    lower: ([x], _, __, tools) => lowerRounded('floor', `${x}`, tools),
    help: 'The whole number at or below a plain number.',
    example: { formula: 'INT(0.3 / 0.1)', value: 3 },
  },
  toStep('CEILING', 'ceiling', ceilingTo, 'Up to a multiple of the step.', {
    formula: 'CEILING(151 ft; 5 ft)',
    unit: 'ft',
    value: 155,
  }),
  toStep('FLOOR', 'floor', floorTo, 'Down to a multiple of the step.', {
    formula: 'FLOOR(7.9 m; 2 m)',
    unit: 'm',
    value: 6,
  }),
  toStep('MROUND', 'nearest', nearestTo, 'To the nearest multiple of the step, halves away from zero.', {
    formula: 'MROUND(17 in; 1 ft)',
    unit: 'ft',
    value: 1,
  }),
  {
    name: 'MOD',
    group: 'rounding',
    parameters: [each('x', like), each('divisor', like)],
    gives: (types) => common(types),
    evaluate: {
      kind: 'each',
      of: (x, d) => (d === 0 ? Number.NaN : remainderOf(x, d)),
      refuse: () => ({ words: 'the divisor is zero', argument: 1 }),
    },
    lower: ([x, d], _, __, tools) => lowerRemainder(`${x}`, `${d}`, tools),
    help: 'The remainder, with the sign of the divisor.',
    example: { formula: 'MOD(-7; 3)', value: 2 },
  },
  {
    name: 'QUOTIENT',
    group: 'rounding',
    parameters: [each('x', like), each('divisor', like)],
    gives: () => plainType,
    evaluate: {
      kind: 'each',
      of: (x, d) => (d === 0 ? Number.NaN : truncTo(x / d, 1)),
      refuse: () => ({ words: 'the divisor is zero', argument: 1 }),
    },
    lower: ([x, d], _, __, tools) => lowerRounded('trunc', `${x}/${d}`, tools),
    help: 'How many whole times the divisor goes into x.',
    example: { formula: 'QUOTIENT(20 ft; 6 ft)', value: 3 },
  },
];
