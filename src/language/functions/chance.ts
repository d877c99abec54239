import { plainType } from '../type.ts';
import type { FunctionEntry, LoweringTools, Refusal } from './entry.ts';
import { erf, erfc, lowerErf, lowerErfc } from './error-function.ts';
import { common, each, like, plain } from './parameter.ts';
import { betaQuantile, normalQuantile, triangularQuantile } from './quantiles.ts';

const chanceWords = 'the chance lies between 0 and 1, both excluded';
const between = (p: number) => p > 0 && p < 1;
const refusal =
  (otherwise: string) =>
  ([p = 0]: readonly number[]): Refusal =>
    between(p) ? { words: otherwise } : { words: chanceWords, argument: 0 };

/** The standard normal quantile, whose middle is exactly zero. */
function lowerStandard(p: string, tools: LoweringTools): string {
  return `IF(${p}=${tools.constant(0.5)},${tools.constant(0)},NORM.S.INV(${p}))`;
}

export const chance: readonly FunctionEntry[] = [
  {
    name: 'ERF',
    group: 'chance',
    parameters: [each('x', plain)],
    gives: () => plainType,
    evaluate: { kind: 'each', of: erf },
    lower: ([x = ''], _, __, tools) => lowerErf(x, tools),
    help: 'The error function.',
    example: { formula: 'ERF(0.5)', value: 0.5204998778130465 },
  },
  {
    name: 'ERFC',
    group: 'chance',
    parameters: [each('x', plain)],
    gives: () => plainType,
    evaluate: { kind: 'each', of: erfc },
    lower: ([x = ''], _, __, tools) => lowerErfc(x, tools),
    help: 'One less the error function, exact for large x too.',
    example: { formula: 'ERFC(0)', value: 1 },
  },
  {
    name: 'NORMSINV',
    group: 'chance',
    parameters: [each('chance', plain)],
    gives: () => plainType,
    evaluate: {
      kind: 'each',
      of: (p) => (between(p) ? normalQuantile(p) : Number.NaN),
      refuse: refusal(chanceWords),
    },
    lower: ([p = ''], _, __, tools) => lowerStandard(p, tools),
    help: 'The value a standard normal variable stays below with a given chance.',
    example: { formula: 'NORMSINV(0.975)', value: 1.959963984540054 },
  },
  {
    name: 'NORMINV',
    group: 'chance',
    parameters: [each('chance', plain), each('mean', like), each('deviation', like)],
    gives: (types) => common(types.slice(1)),
    evaluate: {
      kind: 'each',
      of: (p, mean, sd) => (between(p) && sd > 0 ? mean + sd * normalQuantile(p) : Number.NaN),
      refuse: refusal('the standard deviation must be above zero'),
    },
    lower: ([p = '', mean, sd], _, __, tools) =>
      `IF(${sd}>${tools.constant(0)},${mean}+${sd}*${lowerStandard(p, tools)},${tools.refused})`,
    help: 'The value a normal variable stays below with a given chance.',
    example: { formula: 'NORMINV(0.5; 10 m; 2 m)', unit: 'm', value: 10 },
  },
  {
    name: 'LOGINV',
    group: 'chance',
    parameters: [
      each('chance', plain),
      each('mean of logarithm', plain),
      each('deviation of logarithm', plain),
    ],
    gives: () => plainType,
    evaluate: {
      kind: 'each',
      of: (p, mean, sd) => (between(p) && sd > 0 ? Math.exp(mean + sd * normalQuantile(p)) : Number.NaN),
      refuse: refusal('the standard deviation must be above zero'),
    },
    lower: ([p = '', mean, sd], _, __, tools) =>
      `IF(${sd}>${tools.constant(0)},EXP(${mean}+${sd}*${lowerStandard(p, tools)}),${tools.refused})`,
    help: 'The value a lognormal variable stays below with a given chance.',
    example: { formula: 'LOGINV(0.5; 0; 1)', value: 1 },
  },
  {
    name: 'TRIANGINV',
    group: 'chance',
    parameters: [each('chance', plain), each('low', like), each('mode', like), each('high', like)],
    gives: (types) => common(types.slice(1)),
    evaluate: {
      kind: 'each',
      of: (p, low, mode, high) =>
        p >= 0 && p <= 1 && low <= mode && mode <= high && low < high
          ? triangularQuantile(p, low, mode, high)
          : Number.NaN,
      refuse: refusal('low, mode and high must rise in this order'),
    },
    lower: ([p, low, mode, high], _, __, tools) => {
      const one = tools.constant(1);
      const rising = `${low}+SQRT(${p}*(${high}-${low})*(${mode}-${low}))`;
      const falling = `${high}-SQRT((${one}-${p})*(${high}-${low})*(${high}-${mode}))`;
      const value = `IF(${p}<=(${mode}-${low})/(${high}-${low}),${rising},${falling})`;
      // Each product is below zero exactly where its order is wrong.
      const inOrder = `MIN(${p}*(${one}-${p}),${mode}-${low},${high}-${mode})>=${tools.constant(0)}`;
      return `IF(${low}<${high},IF(${inOrder},${value},${tools.refused}),${tools.refused})`;
    },
    help: 'The value a triangular variable stays below with a given chance.',
    example: { formula: 'TRIANGINV(0.8; 80; 100; 150)', value: 150 - Math.sqrt(0.2 * 70 * 50) },
  },
  {
    name: 'BETAINV',
    group: 'chance',
    parameters: [
      each('chance', plain),
      each('alpha', plain),
      each('beta', plain),
      each('low', like),
      each('high', like),
    ],
    gives: (types) => common(types.slice(3)),
    evaluate: {
      kind: 'each',
      of: (p, a, b, low, high) =>
        between(p) && a > 0 && b > 0 && low < high ? low + (high - low) * betaQuantile(p, a, b) : Number.NaN,
      refuse: refusal('alpha and beta must be above zero, and low below high'),
    },
    noRecheck: 'the beta quantile of the recheck is right to about seven digits only',
    help: 'The value a beta variable from low to high stays below with a given chance.',
    example: { formula: 'BETAINV(0.5; 2; 2; 0 m; 10 m)', unit: 'm', value: 5 },
  },
];
