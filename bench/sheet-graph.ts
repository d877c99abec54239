import { drawsFrom } from './draws.ts';

/** A calculated cell in three dialects; the cells it reads stand before it. */
export interface GraphFormula {
  readonly reads: readonly number[];
  /** In the language, over names x0, x1, …: lengths. */
  readonly ours: string;
  /** In a spreadsheet, over A1, A2, …: metres. */
  readonly sheet: string;
  /** In mathjs, over x0, x1, …: units of length. */
  readonly mathjs: string;
}

/** A fixed graph of cells in order: a number is a given length in metres, the others are formulas. */
export interface Graph {
  readonly cells: readonly (number | GraphFormula)[];
  /** Which cells are given. */
  readonly givens: readonly number[];
}

type Form = (names: readonly string[]) => string;

/** Forms that keep every value between the least and about the greatest of those it reads. */
const forms: readonly { reads: number; ours: Form; sheet: Form; mathjs: Form }[] = [
  {
    reads: 2,
    ours: ([a, b]) => `(${a} + ${b}) * 0.5`,
    sheet: ([a, b]) => `=(${a}+${b})*0.5`,
    mathjs: ([a, b]) => `(${a} + ${b}) * 0.5`,
  },
  {
    reads: 4,
    ours: ([a, b, c, d]) => `2 * ${a} * ${b} / (${c} + ${d})`,
    sheet: ([a, b, c, d]) => `=2*${a}*${b}/(${c}+${d})`,
    mathjs: ([a, b, c, d]) => `2 * ${a} * ${b} / (${c} + ${d})`,
  },
  {
    reads: 2,
    ours: ([a, b]) => `SQRT(${a} * ${b})`,
    sheet: ([a, b]) => `=SQRT(${a}*${b})`,
    mathjs: ([a, b]) => `sqrt(${a} * ${b})`,
  },
  {
    reads: 4,
    ours: ([a, b, c, d]) => `IF(${a} > ${b}; ${a} - 0.5 * ${b}; ${c} + 0.1 * ${d})`,
    sheet: ([a, b, c, d]) => `=IF(${a}>${b},${a}-0.5*${b},${c}+0.1*${d})`,
    mathjs: ([a, b, c, d]) => `${a} > ${b} ? ${a} - 0.5 * ${b} : ${c} + 0.1 * ${d}`,
  },
  {
    reads: 3,
    ours: ([a, b, c]) => `0.75 * ${a} + 0.25 * LESSER(${b}; ${c})`,
    sheet: ([a, b, c]) => `=0.75*${a}+0.25*MIN(${b},${c})`,
    mathjs: ([a, b, c]) => `0.75 * ${a} + 0.25 * min(${b}, ${c})`,
  },
];

/** The length of a sheet: how far back a formula reads, and a third of it is given, at its start, as on a page. */
const SHEET = 60;

/** The graph of `count` cells, always the same: sheet after sheet, each reading from the one before. */
export function sheetGraph(count: number): Graph {
  const draw = drawsFrom(count);
  const cells = Array.from({ length: count }, (_, at): number | GraphFormula => {
    if (at % SHEET < SHEET / 3) return 1 + ((at * 37) % 100) / 10;
    const form = forms[draw(forms.length)];
    if (!form) throw new Error('a draw has missed');
    const reads = Array.from({ length: form.reads }, () => at - 1 - draw(Math.min(at, SHEET)));
    const names = reads.map((read) => `x${read}`);
    const addresses = reads.map((read) => `A${read + 1}`);
    return { reads, ours: form.ours(names), sheet: form.sheet(addresses), mathjs: form.mathjs(names) };
  });
  return { cells, givens: cells.flatMap((cell, at) => (typeof cell === 'number' ? [at] : [])) };
}

/** One edit: a given and its new value, metres. */
export interface GraphEdit {
  readonly at: number;
  readonly value: number;
}

/** A fixed sequence of edits of random givens, handed out batch by batch. */
export function graphEdits({ givens }: Graph): (count: number) => readonly GraphEdit[] {
  const draw = drawsFrom(7);
  return (count) =>
    Array.from({ length: count }, () => ({
      at: givens[draw(givens.length)] ?? 0,
      value: 1 + draw(1_000_000) / 100_000,
    }));
}
