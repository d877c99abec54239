import { above, num, part, type Row, text } from './arithmetic.ts';

/*
 * States of volume: bank as it lies, loose when dug, compacted in the fill (FM 5-434 (2000), 1-6). Swell = loose over
 * bank volume less one, load factor = bank over loose volume, shrinkage factor = compacted over bank volume, each also
 * the inverse ratio of the densities (Nunnally, ch. 2). What is dug never takes less room than it did.
 */

/** The loose volume of one bank volume, from the way in which it is stated and the bank density. */
export function looseOfBank(by: string, row: Row, bankDensity: number): number {
  const ways: Readonly<Record<string, () => number>> = {
    percent: () => 1 + part(row.S_s),
    factor: () => num(row.F_s),
    'load factor': () => 1 / above(num(row.LF_s)),
    'loose density': () => bankDensity / above(num(row.ρ_ls)),
  };
  const factor = ways[by]?.() ?? Number.NaN;
  return factor >= 1 - 1e-12 ? factor : Number.NaN;
}

/** The compacted volume of one bank volume. */
export function compactedOfBank(by: string, row: Row, bankDensity: number): number {
  const ways: Readonly<Record<string, () => number>> = {
    percent: () => 1 - part(row.Z_s),
    factor: () => num(row.SF_s),
    'compacted density': () => bankDensity / above(num(row.ρ_cs)),
  };
  return above(ways[by]?.() ?? Number.NaN);
}

/** What is known of a material of the list. */
export interface Material {
  readonly name: string;
  readonly kind: string;
  /** In kg/bcm. */
  readonly bank: number;
  /** In lcm/bcm. */
  readonly loose: number;
  readonly recycled: number;
  /** The most that its kind swells, and the least that a cubic metre of its kind weighs as it lies, in kg. */
  readonly swellsTo: number;
  readonly weighs: number;
  /** In USD/t. */
  readonly disposalFee: number;
  readonly recyclingCharge: number;
}

/** Mineral material breaks to two and a half times its volume at most, timber to five, metal to some 25 times. */
function likely(kind: string): Pick<Material, 'swellsTo' | 'weighs'> {
  const pound = 0.45359237 / 0.3048 ** 3;
  const kinds: Readonly<Record<string, readonly [swellsTo: number, weighs: number]>> = {
    asphalt: [2.5, 90],
    base: [2.5, 90],
    concrete: [2.5, 90],
    earth: [2.5, 60],
    timber: [5, 20],
    other: [25, 10],
  };
  const [swellsTo, weighs] = kinds[kind] ?? [Number.NaN, Number.NaN];
  return { swellsTo, weighs: weighs * pound };
}

/** A material of a row; its weight is stated as a density or as a unit weight. */
export function materialOf(row: Row, gravity: number): Material {
  const isWeight = text(row.ρ_by, 'density') === 'unit weight';
  const bank = above(isWeight ? (num(row.γ) * 1000) / gravity : num(row.ρ));
  return {
    name: text(row.material),
    kind: text(row.kind),
    bank,
    loose: looseOfBank(text(row.by), row, bank),
    recycled: part(row.R, 0),
    ...likely(text(row.kind)),
    disposalFee: num(row.c_d, 0),
    recyclingCharge: num(row.c_r, 0),
  };
}
