import { addRational, ONE, type Rational, rational, timesRational, writeRational } from './rational.ts';

/**
 * A physical dimension: bases with exact exponents, none of them zero, in canonical order.
 * Bases: `L` length, `M` mass, `T` time, `Θ` temperature; a currency code; the symbol of a base unit of the book.
 * `key` is the canonical text ("L M T^-2", '' if plain): equal keys, and only they, are equal dimensions.
 */
export interface Dimension {
  readonly key: string;
  readonly powers: readonly (readonly [base: string, power: Rational])[];
}

/** The bases of physics, in the order they are written. */
export const PHYSICAL_BASES: readonly string[] = ['L', 'M', 'T', 'Θ'];

/** The dimension of a plain number. */
export const PLAIN: Dimension = { key: '', powers: [] };

/** The dimension of one base to the first power. */
export function baseDimension(base: string): Dimension {
  return dimensionOf([[base, ONE]]);
}

/** Whether two dimensions are equal. */
export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a === b || a.key === b.key;
}

/** The dimension of a product. */
export function timesDimension(a: Dimension, b: Dimension): Dimension {
  if (a.powers.length === 0) return b;
  if (b.powers.length === 0) return a;
  return dimensionOf([...a.powers, ...b.powers]);
}

/** The dimension of a quotient. */
export function overDimension(a: Dimension, b: Dimension): Dimension {
  return timesDimension(a, powerDimension(b, { n: -1, d: 1 }));
}

/** The dimension of a power. The exponent is exact: `{ n: 1, d: 2 }` for a square root. */
export function powerDimension(a: Dimension, exponent: Rational): Dimension {
  if (a.powers.length === 0 || (exponent.n === 1 && exponent.d === 1)) return a;
  if (exponent.n === 0) return PLAIN;
  return dimensionOf(a.powers.map(([base, power]) => [base, timesRational(power, exponent)] as const));
}

/** The largest numerator or denominator an exponent may have: beyond it a formula makes no sense on a wharf. */
export const LARGEST_EXPONENT = 99;

/** Whether every exponent is small enough for the algebra to be exact. Refuse what is not. */
export function isTameDimension(a: Dimension): boolean {
  return a.powers.every(([, p]) => Math.abs(p.n) <= LARGEST_EXPONENT && p.d <= LARGEST_EXPONENT);
}

/** The dimension as a person reads it: "L M T^-2"; "plain" for none. */
export function describeDimension(d: Dimension): string {
  return d.key === '' ? 'plain' : d.key;
}

/** Reads the notation `describeDimension` writes ('' or "L M T^-2"), for tables of data. Throws on anything else. */
export function parseDimension(text: string): Dimension {
  const factors = text.split(' ').filter((factor) => factor !== '');
  return dimensionOf(
    factors.map((factor) => {
      const match = /^([^\d^]+)(?:\^(-?\d+)(?:\/(\d+))?)?$/.exec(factor);
      if (match?.[1] === undefined) throw new Error(`not a dimension: ${text}`);
      return [match[1], rational(Number(match[2] ?? 1), Number(match[3] ?? 1))] as const;
    }),
  );
}

/** The dimension of a product of powers, in any order, a base more than once or to the power 0 included. */
export function dimensionOf(powers: Dimension['powers']): Dimension {
  const totals = new Map<string, Rational>();
  for (const [base, power] of powers) {
    const total = totals.get(base);
    totals.set(base, total === undefined ? power : addRational(total, power));
  }
  const kept = [...totals].filter(([, power]) => power.n !== 0);
  if (kept.length === 0) return PLAIN;
  kept.sort(([a], [b]) => rankOf(a) - rankOf(b) || (a < b ? -1 : 1));
  return { key: kept.map(writePower).join(' '), powers: kept };
}

function writePower([base, power]: readonly [string, Rational]): string {
  return power.n === 1 && power.d === 1 ? base : `${base}^${writeRational(power)}`;
}

function rankOf(base: string): number {
  const rank = PHYSICAL_BASES.indexOf(base);
  return rank === -1 ? PHYSICAL_BASES.length : rank;
}
