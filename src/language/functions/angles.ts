import { angleType, plainType } from '../type.ts';
import type { FunctionEntry, Lower, Refusal } from './entry.ts';
import { angle, each, like, plain } from './parameter.ts';

function direct(
  name: string,
  of: (x: number) => number,
  lower: Lower,
  help: string,
  example: FunctionEntry['example'],
  refuse?: () => Refusal,
): FunctionEntry {
  return {
    name,
    group: 'angles',
    parameters: [each('angle', angle)],
    gives: () => plainType,
    evaluate: { kind: 'each', of, ...(refuse && { refuse }) },
    lower,
    help,
    example,
  };
}

function ofPlain(
  name: string,
  gives: FunctionEntry['gives'],
  of: (x: number) => number,
  lower: Lower,
  help: string,
  example: FunctionEntry['example'],
  refuse?: string,
): FunctionEntry {
  return {
    name,
    group: 'angles',
    parameters: [each('x', plain)],
    gives,
    evaluate: { kind: 'each', of, ...(refuse && { refuse: () => ({ words: refuse, argument: 0 }) }) },
    lower,
    help,
    example,
  };
}

const withinOne = (f: (x: number) => number) => (x: number) => (Math.abs(x) <= 1 ? f(x) : Number.NaN);

/** arcsin by arctan, with its two ends apart, where the quotient has no value. */
const arcsine: Lower = ([x], _, __, tools) => {
  const one = tools.constant(1);
  const quarter = tools.helper(`${tools.constant(2)}*ATAN(${one})`);
  return `IF(ABS(${x})=${one},SIGN(${x})*${quarter},ATAN(${x}/SQRT(${one}-${x}*${x})))`;
};

const half = (formula: string): Lower => {
  return ([x], _, __, tools) => {
    const up = tools.helper(`EXP(${x})`);
    const down = tools.helper(`EXP(-${x})`);
    return formula.replaceAll('UP', up).replaceAll('DOWN', down).replaceAll('TWO', tools.constant(2));
  };
};

/** A tangent this large is a right angle that rounding missed. */
const steepest = 1e15;

export const angles: readonly FunctionEntry[] = [
  {
    name: 'PI',
    group: 'angles',
    parameters: [],
    gives: () => plainType,
    evaluate: { kind: 'each', of: () => Math.PI },
    lower: (_, __, ___, tools) => `(${tools.constant(4)}*ATAN(${tools.constant(1)}))`,
    help: 'The ratio of a circle to its diameter.',
    example: { formula: 'ROUND(PI(); 4)', value: 3.1416 },
  },
  direct('SIN', Math.sin, ([x]) => `SIN(${x})`, 'The sine of an angle.', {
    formula: 'SIN(30 deg)',
    value: 0.5,
  }),
  direct('COS', Math.cos, ([x]) => `COS(${x})`, 'The cosine of an angle.', {
    formula: 'COS(60 deg)',
    value: 0.5,
  }),
  direct(
    'TAN',
    (x) => (Math.abs(Math.tan(x)) > steepest ? Number.NaN : Math.tan(x)),
    ([x]) => `(SIN(${x})/COS(${x}))`,
    'The tangent of an angle.',
    { formula: 'TAN(45 deg)', value: 1 },
    () => ({ words: 'a right angle has no tangent', argument: 0 }),
  ),
  ofPlain(
    'ASIN',
    () => angleType,
    withinOne(Math.asin),
    arcsine,
    'The angle whose sine is x.',
    { formula: 'ASIN(0.5)', unit: 'deg', value: 30 },
    'a sine lies between -1 and 1',
  ),
  ofPlain(
    'ACOS',
    () => angleType,
    withinOne(Math.acos),
    (each, columns, options, tools) =>
      `(${tools.constant(2)}*ATAN(${tools.constant(1)})-${arcsine(each, columns, options, tools)})`,
    'The angle whose cosine is x.',
    { formula: 'ACOS(0.5)', unit: 'deg', value: 60 },
    'a cosine lies between -1 and 1',
  ),
  ofPlain(
    'ATAN',
    () => angleType,
    Math.atan,
    ([x]) => `ATAN(${x})`,
    'The angle whose tangent is x.',
    {
      formula: 'ATAN(1)',
      unit: 'deg',
      value: 45,
    },
  ),
  {
    name: 'ATAN2',
    group: 'angles',
    parameters: [each('x', like), each('y', like)],
    gives: () => angleType,
    evaluate: {
      kind: 'each',
      of: (x, y) => (x === 0 && y === 0 ? Number.NaN : Math.atan2(y, x)),
      refuse: () => ({ words: 'x and y are both zero, which is no direction' }),
    },
    lower: ([x, y], _, __, tools) => {
      const zero = tools.constant(0);
      const quarter = tools.helper(`${tools.constant(2)}*ATAN(${tools.constant(1)})`);
      const turned = `IF(${y}<${zero},-${tools.constant(2)}*${quarter},${tools.constant(2)}*${quarter})`;
      const upright = `IF(${y}=${zero},${tools.refused},SIGN(${y})*${quarter})`;
      return `IF(${x}=${zero},${upright},ATAN(${y}/${x})+IF(${x}<${zero},${turned},${zero}))`;
    },
    help: 'The angle from the x direction to the point x, y.',
    example: { formula: 'ATAN2(1 m; 1 m)', unit: 'deg', value: 45 },
  },
  ofPlain('SINH', () => plainType, Math.sinh, half('((UP-DOWN)/TWO)'), 'The hyperbolic sine.', {
    formula: 'SINH(0)',
    value: 0,
  }),
  ofPlain('COSH', () => plainType, Math.cosh, half('((UP+DOWN)/TWO)'), 'The hyperbolic cosine.', {
    formula: 'COSH(0)',
    value: 1,
  }),
  ofPlain('TANH', () => plainType, Math.tanh, half('((UP-DOWN)/(UP+DOWN))'), 'The hyperbolic tangent.', {
    formula: 'TANH(0)',
    value: 0,
  }),
  ofPlain(
    'ASINH',
    () => plainType,
    Math.asinh,
    ([x], _, __, tools) => `(SIGN(${x})*LN(ABS(${x})+SQRT(${x}*${x}+${tools.constant(1)})))`,
    'The number whose hyperbolic sine is x.',
    { formula: 'SINH(ASINH(2))', value: 2 },
  ),
  ofPlain(
    'ACOSH',
    () => plainType,
    (x) => (x >= 1 ? Math.acosh(x) : Number.NaN),
    ([x], _, __, tools) => `LN(${x}+SQRT(${x}*${x}-${tools.constant(1)}))`,
    'The number not below zero whose hyperbolic cosine is x.',
    { formula: 'COSH(ACOSH(2))', value: 2 },
    'a hyperbolic cosine is at least 1',
  ),
  ofPlain(
    'ATANH',
    () => plainType,
    (x) => (Math.abs(x) < 1 ? Math.atanh(x) : Number.NaN),
    ([x], _, __, tools) =>
      `(LN((${tools.constant(1)}+${x})/(${tools.constant(1)}-${x}))/${tools.constant(2)})`,
    'The number whose hyperbolic tangent is x.',
    { formula: 'TANH(ATANH(0.5))', value: 0.5 },
    'a hyperbolic tangent lies between -1 and 1',
  ),
];
