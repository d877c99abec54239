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
  /** Whether a source of its density is named. */
  readonly hasSource: boolean;
  /** In kg/bcm. */
  readonly bank: number;
  /** In lcm/bcm. */
  readonly loose: number;
  readonly recycled: number;
  /** The most that its kind swells, and the least that a cubic metre of its kind weighs as it lies, in kg. */
  readonly swellsTo: number;
  readonly weighs: number;
  /** The least that its kind swells, the most that it weighs, the most of it that is recycled. */
  readonly swellsFrom: number;
  readonly weighsTo: number;
  readonly recyclable: number;
  /** The thinnest layer of its kind, in m. */
  readonly thinnest: number;
  /** In USD/t. */
  readonly disposalFee: number;
  readonly recyclingCharge: number;
}

type Likely = Pick<Material, 'swellsTo' | 'weighs' | 'swellsFrom' | 'weighsTo' | 'recyclable' | 'thinnest'>;

/**
 * Mineral material breaks to two and a half times its volume at most, timber and the rest to five, metal to some 25 times; nothing is
 * lighter or heavier than its kind, treated timber is not recycled, and no layer is thinner than it can be laid.
 */
function likely(kind: string): Likely {
  const pound = 0.45359237 / 0.3048 ** 3;
  const [swellsFrom, swellsTo, weighs, weighsTo, recyclable, inches] =
    kinds[kind] ?? Array(6).fill(Number.NaN);
  return {
    swellsFrom,
    swellsTo,
    weighs: weighs * pound,
    weighsTo: weighsTo * pound,
    recyclable,
    thinnest: inches * 0.0254,
  };
}

/** Swells from and to, weighs from and to in lb/ft³, the part that can be recycled, the thinnest layer in inches. */
const kinds: Readonly<Record<string, readonly [number, number, number, number, number, number]>> = {
  asphalt: [1.2, 2.5, 90, 170, 1, 0.75],
  base: [1.05, 2.5, 90, 170, 1, 2],
  concrete: [1.3, 2.5, 90, 200, 1, 1.5],
  earth: [1.05, 2.5, 60, 145, 1, 2],
  timber: [1.2, 5, 20, 80, 0, 0.75],
  metal: [1, 25, 100, 500, 1, 0.1],
  other: [1.05, 5, 20, 200, 1, 0.25],
};

/** A material of a row; its weight is stated as a density or as a unit weight. */
export function materialOf(row: Row, gravity: number): Material {
  const isWeight = text(row.ρ_by, 'density') === 'unit weight';
  const bank = above(isWeight ? (num(row.γ) * 1000) / gravity : num(row.ρ));
  return {
    name: text(row.material),
    kind: text(row.kind),
    hasSource: typeof row.source === 'string',
    bank,
    loose: looseOfBank(text(row.by), row, bank),
    recycled: part(row.R, 0),
    ...likely(text(row.kind)),
    disposalFee: num(row.c_d, 0),
    recyclingCharge: num(row.c_r, 0),
  };
}
