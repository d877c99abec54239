import { describe, expect, test } from 'vitest';
import { findFunction } from '../../src/language/index.ts';
import { writeDecimals } from '../../src/units/index.ts';
import { randomFrom } from './generate/index.ts';
import { SEED } from './seed.ts';

function evaluator(name: string): (...args: number[]) => number {
  const evaluate = findFunction(name)?.evaluate;
  if (evaluate?.kind !== 'each') throw new Error(`${name} is not computed element by element`);
  return evaluate.of;
}

/** Whole-number division rounded down, to the nearest (halves away from zero), up. */
function floor(n: bigint, d: bigint): bigint {
  const cut = n / d;
  return n % d !== 0n && n < 0n !== d < 0n ? cut - 1n : cut;
}
const ceiling = (n: bigint, d: bigint) => -floor(-n, d);
const towardsZero = (n: bigint, d: bigint) => n / d;
const away = (n: bigint, d: bigint) => (n < 0n === d < 0n ? ceiling(n, d) : floor(n, d));
const size = (n: bigint) => (n < 0n ? -n : n);
const nearest = (n: bigint, d: bigint) => {
  const whole = (2n * size(n) + size(d)) / (2n * size(d));
  return n < 0n === d < 0n ? whole : -whole;
};

/** Decimals as people write them, exactly: digits over a power of ten. */
interface Decimal {
  readonly digits: bigint;
  readonly scale: bigint;
}
const asNumber = ({ digits, scale }: Decimal) => Number(digits) / Number(scale);

describe('rounding decimals agrees with exact whole-number arithmetic', () => {
  const random = randomFrom(SEED + 7);
  const decimal = (sign: boolean): Decimal => ({
    digits: BigInt(1 + random.below(200_000)) * (sign && random.chance(0.4) ? -1n : 1n),
    scale: 10n ** BigInt(random.below(5)),
  });
  test.each([
    ['CEILING', ceiling],
    ['FLOOR', floor],
    ['MROUND', nearest],
  ] as const)('%s to a step', (name, exact) => {
    const round = evaluator(name);
    for (let n = 0; n < 5000; n += 1) {
      const [x, step] = [decimal(true), decimal(false)];
      const steps = exact(x.digits * step.scale, step.digits * x.scale);
      const expected = Number(steps * step.digits) / Number(step.scale);
      const found = round(asNumber(x), asNumber(step));
      if (Math.abs(found - expected) > 1e-12 * Math.abs(expected))
        expect({ name, x: asNumber(x), step: asNumber(step), found }).toEqual({ expected });
    }
  });
  test.each([
    ['ROUND', nearest],
    ['ROUNDUP', away],
    ['ROUNDDOWN', towardsZero],
    ['TRUNC', towardsZero],
  ] as const)('%s to digits', (name, exact) => {
    const round = evaluator(name);
    for (let n = 0; n < 5000; n += 1) {
      const x = decimal(true);
      const digits = random.below(4);
      const scale = 10n ** BigInt(digits);
      const expected = Number(exact(x.digits * scale, x.scale)) / Number(scale);
      const found = round(asNumber(x), digits);
      if (found !== expected) expect({ name, x: asNumber(x), digits, found }).toEqual({ expected });
    }
  });
  test('QUOTIENT and MOD', () => {
    const [quotient, modulo] = [evaluator('QUOTIENT'), evaluator('MOD')];
    for (let n = 0; n < 5000; n += 1) {
      const [x, d] = [decimal(true), decimal(true)];
      const [a, b] = [x.digits * d.scale, d.digits * x.scale];
      expect(quotient(asNumber(x), asNumber(d)) + 0).toBe(Number(towardsZero(a, b)));
      const expected = Number(a - floor(a, b) * b) / Number(x.scale * d.scale);
      expect(modulo(asNumber(x), asNumber(d))).toBeCloseTo(expected, 7);
      expect(Math.sign(modulo(asNumber(x), asNumber(d))) * Math.sign(asNumber(d))).toBeGreaterThanOrEqual(0);
    }
  });
});

describe('decimals of up to fifteen digits agree with exact whole-number arithmetic', () => {
  const random = randomFrom(SEED + 11);
  const rules = [
    ['CEILING', ceiling],
    ['FLOOR', floor],
    ['MROUND', nearest],
    ['ROUND', nearest],
    ['ROUNDUP', away],
    ['ROUNDDOWN', towardsZero],
    ['TRUNC', towardsZero],
    ['INT', floor],
  ] as const;
  test.each(rules)('%s', (name, exact) => {
    const round = evaluator(name);
    const isStepped = /^[CFM]/.test(name);
    for (let n = 0; n < 5000; n += 1) {
      // Up to twelve digits are kept and one to three stand behind them; a half and a whole number are often met.
      const behind = 1 + random.below(3);
      const places = name === 'INT' || isStepped ? 0 : random.below(6);
      const kept = BigInt(random.below(10 ** (1 + random.below(9)))) * 1000n + BigInt(random.below(1000));
      const rest = random.chance(0.3) ? 5n * 10n ** BigInt(behind - 1) : BigInt(random.below(10 ** behind));
      const digits = (kept * 10n ** BigInt(behind) + rest) * (random.chance(0.4) ? -1n : 1n);
      const x = Number(`${digits}e-${behind + places}`);
      const expected = Number(`${exact(digits, 10n ** BigInt(behind))}e-${places}`);
      const found = round(x, isStepped ? 1 : places);
      if (found !== expected) expect({ name, x, places, found }).toEqual({ expected });
    }
  });
  test.each([
    [2_183_031.810_772_9, 5, 2_183_031.810_77],
    [-2_183_031.810_772_9, 5, -2_183_031.810_77],
    [218_303_181_077.29, 0, 218_303_181_077],
  ])('ROUND(%d; %d) is %d', (x, places, rounded) => {
    expect(evaluator('ROUND')(x, places)).toBe(rounded);
    expect(Number(writeDecimals(x, places))).toBe(rounded);
  });
  test('a few roundings of a large quotient turn nothing round', () => {
    for (const whole of [1e11 + 1, 123_456_789_012, 2e13 + 7])
      for (const places of [-3, -2, -1, 1, 2, 3]) {
        const x = whole * (1 + places * Number.EPSILON);
        expect([evaluator('CEILING')(x, 1), evaluator('FLOOR')(x, 1)]).toEqual([whole, whole]);
      }
  });
});

describe('the margin of a whole quotient', () => {
  const names = ['CEILING', 'FLOOR', 'MROUND', 'ROUND', 'ROUNDUP', 'ROUNDDOWN', 'TRUNC', 'INT'];
  test.each(names)('%s takes what is within 1e-9 of a whole number for it', (name) => {
    const round = evaluator(name);
    for (const whole of [-149, -1, 0, 1, 49, 149, 1e6])
      for (const off of [-0.9e-9, 0.9e-9])
        expect(round(whole + off, /^[CFM]/.test(name) ? 1 : 0)).toBe(whole);
  });
  test.each(names)('%s leaves large whole numbers alone, whose margin is wide', (name) => {
    const round = evaluator(name);
    for (const whole of [1e12, 123_456_789_012, -4e12, 2 ** 53 - 1])
      expect(round(whole, /^[CFM]/.test(name) ? 1 : 0)).toBe(whole);
  });
  test('beyond the margin the direction counts', () => {
    expect(evaluator('CEILING')(49 + 2e-9, 1)).toBe(50);
    expect(evaluator('FLOOR')(49 - 2e-9, 1)).toBe(48);
    expect(evaluator('INT')(49 - 2e-9)).toBe(48);
    expect(evaluator('ROUNDUP')(-49 - 2e-9, 0)).toBe(-50);
    expect(evaluator('TRUNC')(-49 + 2e-9, 0)).toBe(-48);
    expect(evaluator('MOD')(3 - 2e-9, 1)).toBeCloseTo(1, 6);
    expect(evaluator('MOD')(3 - 0.9e-9, 1)).toBe(0);
  });
  test('halves have the margin too', () => {
    expect(evaluator('ROUND')(2.5 - 0.9e-9, 0)).toBe(3);
    expect(evaluator('ROUND')(-2.5 + 0.9e-9, 0)).toBe(-3);
    expect(evaluator('ROUND')(2.5 - 2e-9, 0)).toBe(2);
  });
});
