import { plainType } from '../type.ts';
import type { FunctionEntry, ScanEvaluator } from './entry.ts';
import { any, common, each, like, likeAny, likePoints } from './parameter.ts';

/** A running function from its one step. */
function running(step: ScanEvaluator['step']): ScanEvaluator {
  return {
    kind: 'scan',
    step,
    of: (values, out) => {
      let before: number | undefined;
      for (let at = 0; at < values.length; at += 1) {
        before = step(before, values[at] as number);
        out[at] = before;
      }
    },
  };
}

/** The running sum keeps the low-order parts, as SUM does. */
const runningSum: ScanEvaluator = {
  kind: 'scan',
  step: (before, value) => (before ?? 0) + value,
  of: (values, out) => {
    let sum = 0;
    let lost = 0;
    for (let at = 0; at < values.length; at += 1) {
      const value = values[at] as number;
      const next = sum + value;
      lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
      sum = next;
      out[at] = sum + lost;
    }
  },
};

export const rows: readonly FunctionEntry[] = [
  {
    name: 'ABOVE',
    group: 'rows of a table',
    parameters: [each('column', likeAny), each('first', likeAny)],
    gives: (types) => common(types),
    evaluate: { kind: 'special', node: 'above' },
    help: 'The value of a column of this table in the row above; `first` in the first row.',
    example: {
      formula: 'ABOVE(bottom; 0 m)',
      given: { 'layers.bottom': ['4 m', '9 m', '15 m'] },
      within: 'layers',
      unit: 'm',
      value: [0, 4, 9],
    },
  },
  {
    name: 'ROW',
    group: 'rows of a table',
    parameters: [],
    gives: () => plainType,
    evaluate: { kind: 'special', node: 'row' },
    help: 'The number of this row, from 1.',
    example: {
      formula: 'ROW()',
      given: { 'layers.t': ['4 m', '5 m', '6 m'] },
      within: 'layers',
      value: [1, 2, 3],
    },
  },
  {
    name: 'RUNNINGSUM',
    group: 'rows of a table',
    parameters: [each('value', like)],
    gives: (types) => common(types),
    evaluate: runningSum,
    lower: ([before, value]) => `(${before}+${value})`,
    worked: { as: 'sum' },
    help: 'The sum of a column of this table from the first row to this one.',
    example: {
      formula: 'RUNNINGSUM(t)',
      given: { 'layers.t': ['4 m', '5 m', '6 m'] },
      within: 'layers',
      unit: 'm',
      value: [4, 9, 15],
    },
  },
  {
    name: 'RUNNINGMAX',
    group: 'rows of a table',
    parameters: [each('value', likePoints)],
    gives: (types) => common(types),
    evaluate: running((before, value) => (before === undefined ? value : Math.max(before, value))),
    lower: ([before, value]) => `MAX(${before},${value})`,
    help: 'The greatest value of a column of this table from the first row to this one.',
    example: {
      formula: 'RUNNINGMAX(t)',
      given: { 'layers.t': ['4 m', '3 m', '6 m'] },
      within: 'layers',
      unit: 'm',
      value: [4, 4, 6],
    },
  },
  {
    name: 'RUNNINGMIN',
    group: 'rows of a table',
    parameters: [each('value', likePoints)],
    gives: (types) => common(types),
    evaluate: running((before, value) => (before === undefined ? value : Math.min(before, value))),
    lower: ([before, value]) => `MIN(${before},${value})`,
    help: 'The least value of a column of this table from the first row to this one.',
    example: {
      formula: 'RUNNINGMIN(t)',
      given: { 'layers.t': ['4 m', '3 m', '6 m'] },
      within: 'layers',
      unit: 'm',
      value: [4, 3, 3],
    },
  },
  {
    name: 'SERIES',
    group: 'rows of a table',
    parameters: [each('start', like), each('stop', like), each('step', like)],
    gives: (types) => common(types),
    evaluate: { kind: 'special', node: 'series' },
    help: 'Makes the rows of a table: start, start + step and so on up to stop.',
    example: { formula: 'SERIES(0 m; 2 m; 0.5 m)', within: 'profile', unit: 'm', value: [0, 0.5, 1, 1.5, 2] },
  },
  {
    name: 'KNOWN',
    group: 'rows of a table',
    parameters: [{ name: 'column', takes: any, role: 'column' }],
    gives: (types) => types[0] ?? plainType,
    evaluate: { kind: 'special', node: 'known' },
    help: 'The rows of a column that are filled in; only directly inside an aggregate.',
    example: {
      formula: 'AVERAGE(KNOWN(tests.R))',
      given: { 'tests.R': ['4 MN', '', '2 MN'] },
      unit: 'MN',
      value: 3,
    },
  },
];
