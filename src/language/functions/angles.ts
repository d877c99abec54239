import { areEqual, EQUALITY } from '../../units/index.ts';
import { angleType, plainType } from '../type.ts';
import type { FunctionEntry, Lower, LoweringTools, Refusal } from './entry.ts';
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

/** A sine or cosine that exceeds one by the rounding of a computation alone is one. */
const withinOne = (f: (x: number) => number) => (x: number) => {
  const size = Math.abs(x);
  if (size <= 1) return f(x);
  return areEqual(size, 1) ? f(Math.sign(x)) : Number.NaN;
};

/** What stands at both ends of the sines and cosines, one and what counts as one, and between them. */
function lowerWithinOne(x: string, ends: string, between: string, tools: LoweringTools): string {
  const [one, size] = [tools.constant(1), `ABS(${x})`];
  const atEnd = `(${size}-${one})<=(${tools.constant(EQUALITY)}*${size})`;
  return `IF(${size}>=${one},IF(${atEnd},${ends},${tools.refused}),${between})`;
}

/** arcsin by arctan, with its two ends apart, where the quotient has no value. */
const arcsine: Lower = ([x = ''], _, __, tools) => {
  const one = tools.constant(1);
  const quarter = tools.helper(`${tools.constant(2)}*ATAN(${one})`);
  const between = `ATAN(${x}/SQRT((${one}-${x})*(${one}+${x})))`;
  return lowerWithinOne(x, `SIGN(${x})*${quarter}`, between, tools);
};

/** arccos by arctan of the half angle, which keeps its digits where the cosine is near one. */
const arccosine: Lower = ([x = ''], _, __, tools) => {
  const [one, two] = [tools.constant(1), tools.constant(2)];
  const turned = `${tools.constant(4)}*ATAN(${one})`;
  const ends = `IF(${x}<${tools.constant(0)},${turned},${tools.constant(0)})`;
  return lowerWithinOne(x, ends, `${two}*ATAN(SQRT((${one}-${x})/(${one}+${x})))`, tools);
};

/** e^x - 1 with all its digits near zero (from memory: W. Kahan's quotient of two errors alike). */
function expLessOne(x: string, tools: LoweringTools): string {
  const one = tools.constant(1);
  const power = tools.helper(`EXP(${x})`);
  return tools.helper(`IF(${power}=${one},${x},(${power}-${one})*${x}/LN(${power}))`);
}

/** ln(1 + x) with all its digits near zero, the same way. */
function logOnePlus(x: string, tools: LoweringTools): string {
  const one = tools.constant(1);
  const sum = tools.helper(`${one}+${x}`);
  return `IF(${sum}=${one},${x},${x}*LN(${sum})/(${sum}-${one}))`;
}

/** The inverse of half a power of e, for sizes whose square could not be held. */
const HUGE = 1e8;
function logOfTwice(x: string, tools: LoweringTools): string {
  return `LN(ABS(${x}))+LN(${tools.constant(2)})`;
}

/** Beyond this a hyperbolic tangent is one to the last digit, and the others are half a power of e. */
const FAR = 20;

const hyperbolicSine: Lower = ([x = ''], _, __, tools) => {
  const two = tools.constant(2);
  const half = tools.helper(`EXP(ABS(${x})/${two})`);
  const less = expLessOne(
    tools.helper(`MAX(-${tools.constant(FAR)},MIN(${tools.constant(FAR)},${x}))`),
    tools,
  );
  const near = `(${less}+${less}/(${less}+${tools.constant(1)}))/${two}`;
  return `IF(ABS(${x})>${tools.constant(FAR)},SIGN(${x})*${half}/${two}*${half},${near})`;
};

const hyperbolicCosine: Lower = ([x = ''], _, __, tools) => {
  const two = tools.constant(2);
  const half = tools.helper(`EXP(ABS(${x})/${two})`);
  return `(${half}/${two}*${half}+${tools.constant(1)}/(${two}*${half}*${half}))`;
};

const hyperbolicTangent: Lower = ([x = ''], _, __, tools) => {
  const far = tools.constant(FAR);
  const twice = tools.helper(`${tools.constant(2)}*MAX(-${far},MIN(${far},${x}))`);
  const less = expLessOne(twice, tools);
  return `(${less}/(${less}+${tools.constant(2)}))`;
};

/** No angle is held more closely than this: nearer to an axis, a sine or a cosine is what rounding left of zero. */
const roundingOfAngles = 1e-15;
/** A tangent this large is a right angle that rounding missed. */
const steepest = 1 / roundingOfAngles;

/** With zero for what rounding left of it; the sine of a small angle is no such rest. */
const zeroOnAxis = (of: (x: number) => number) => (x: number) => {
  const y = of(x);
  return Math.abs(y) <= roundingOfAngles * Math.min(1, Math.abs(x)) ? 0 : y;
};

function lowerZeroOnAxis(x: string, value: string, tools: LoweringTools): string {
  const [none, one, rest] = [0, 1, roundingOfAngles].map((known) => tools.constant(known));
  return `IF(ABS(${value})<=${rest}*MIN(${one},ABS(${x})),${none},${value})`;
}

export const angles: readonly FunctionEntry[] = [
  {
    name: 'PI',
    group: 'angles',
    parameters: [],
    gives: () => plainType,
    evaluate: { kind: 'each', of: () => Math.PI },
    lower: (_, __, ___, tools) => `(${tools.constant(4)}*ATAN(${tools.constant(1)}))`,
    help: 'The ratio of a circle to its diameter.',
    example: { formula: 'PI() * 1 rad', unit: 'deg', value: 180 },
  },
  direct(
    'SIN',
    zeroOnAxis(Math.sin),
    ([x = ''], _, __, tools) => lowerZeroOnAxis(x, tools.helper(`SIN(${x})`), tools),
    'The sine of an angle.',
    {
      formula: 'SIN(30 deg)',
      value: 0.5,
    },
  ),
  direct(
    'COS',
    zeroOnAxis(Math.cos),
    ([x = ''], _, __, tools) => lowerZeroOnAxis(x, tools.helper(`COS(${x})`), tools),
    'The cosine of an angle.',
    {
      formula: 'COS(60 deg)',
      value: 0.5,
    },
  ),
  direct(
    'TAN',
    zeroOnAxis((x) => (Math.abs(Math.tan(x)) > steepest ? Number.NaN : Math.tan(x))),
    ([x = ''], _, __, tools) => {
      const tangent = tools.helper(`SIN(${x})/COS(${x})`);
      const found = lowerZeroOnAxis(x, tangent, tools);
      return `IF(ABS(${tangent})>${tools.constant(steepest)},${tools.refused},${found})`;
    },
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
    arccosine,
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
  ofPlain('SINH', () => plainType, Math.sinh, hyperbolicSine, 'The hyperbolic sine.', {
    formula: 'SINH(LN(2))',
    value: 0.75,
  }),
  ofPlain('COSH', () => plainType, Math.cosh, hyperbolicCosine, 'The hyperbolic cosine.', {
    formula: 'COSH(LN(2))',
    value: 1.25,
  }),
  ofPlain('TANH', () => plainType, Math.tanh, hyperbolicTangent, 'The hyperbolic tangent.', {
    formula: 'TANH(LN(2))',
    value: 0.6,
  }),
  ofPlain(
    'ASINH',
    () => plainType,
    Math.asinh,
    ([x = ''], _, __, tools) => {
      const one = tools.constant(1);
      const beyond = tools.helper(`ABS(${x})+${x}*${x}/(${one}+SQRT(${one}+${x}*${x}))`);
      const near = `SIGN(${x})*${logOnePlus(beyond, tools)}`;
      return `IF(ABS(${x})>${tools.constant(HUGE)},SIGN(${x})*(${logOfTwice(x, tools)}),${near})`;
    },
    'The number whose hyperbolic sine is x.',
    { formula: 'SINH(ASINH(2))', value: 2 },
  ),
  ofPlain(
    'ACOSH',
    () => plainType,
    (x) => (x >= 1 ? Math.acosh(x) : Number.NaN),
    ([x = ''], _, __, tools) => {
      const one = tools.constant(1);
      const beyond = tools.helper(`${x}-${one}+SQRT((${x}-${one})*(${x}+${one}))`);
      const near = logOnePlus(beyond, tools);
      const value = `IF(${x}>${tools.constant(HUGE)},${logOfTwice(x, tools)},${near})`;
      return `IF(${x}<${one},${tools.refused},${value})`;
    },
    'The number not below zero whose hyperbolic cosine is x.',
    { formula: 'COSH(ACOSH(2))', value: 2 },
    'a hyperbolic cosine is at least 1',
  ),
  ofPlain(
    'ATANH',
    () => plainType,
    (x) => (Math.abs(x) < 1 ? Math.atanh(x) : Number.NaN),
    ([x], _, __, tools) => {
      const [one, two] = [tools.constant(1), tools.constant(2)];
      const beyond = tools.helper(`${two}*ABS(${x})/(${one}-ABS(${x}))`);
      return `IF(ABS(${x})>=${one},${tools.refused},SIGN(${x})*${logOnePlus(beyond, tools)}/${two})`;
    },
    'The number whose hyperbolic tangent is x.',
    { formula: 'TANH(ATANH(0.5))', value: 0.5 },
    'a hyperbolic tangent lies between -1 and 1',
  ),
];
