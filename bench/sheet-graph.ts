import { drawsFrom } from './draws.ts';

/** A calculated cell in the three dialects; the cells it reads stand before it. */
export interface GraphCell {
  readonly reads: readonly number[];
  /** In the language, over names x0, x1, …: lengths. */
  readonly ours: string;
  /** In a spreadsheet, over A1, A2, …: metres. */
  readonly sheet: string;
  /** In mathjs, over x0, x1, …: units of length. */
  readonly mathjs: string;
}

/** A fixed graph: a third of the cells are given lengths, the others formulas of about five parts. */
export interface Graph {
  readonly givens: readonly number[];
  readonly cells: readonly GraphCell[];
}

type Form = (names: readonly string[]) => string;

/** Forms that keep every value between the least and about the greatest of those it reads. */
const forms: readonly (readonly [count: number, ours: Form, sheet: Form, mathjs: Form])[] = [
  [2, ([a, b]) => `(${a} + ${b}) * 0.5`, ([a, b]) => `=(${a}+${b})*0.5`, ([a, b]) => `(${a} + ${b}) * 0.5`],
  [
    4,
    ([a, b, c, d]) => `2 * ${a} * ${b} / (${c} + ${d})`,
    ([a, b, c, d]) => `=2*${a}*${b}/(${c}+${d})`,
    ([a, b, c, d]) => `2 * ${a} * ${b} / (${c} + ${d})`,
  ],
  [2, ([a, b]) => `SQRT(${a} * ${b})`, ([a, b]) => `=SQRT(${a}*${b})`, ([a, b]) => `sqrt(${a} * ${b})`],
  [
    4,
    ([a, b, c, d]) => `IF(${a} > ${b}; ${a} - 0.5 * ${b}; ${c} + 0.1 * ${d})`,
    ([a, b, c, d]) => `=IF(${a}>${b},${a}-0.5*${b},${c}+0.1*${d})`,
    ([a, b, c, d]) => `${a} > ${b} ? ${a} - 0.5 * ${b} : ${c} + 0.1 * ${d}`,
  ],
  [
    3,
    ([a, b, c]) => `0.75 * ${a} + 0.25 * LESSER(${b}; ${c})`,
    ([a, b, c]) => `=0.75*${a}+0.25*MIN(${b},${c})`,
    ([a, b, c]) => `0.75 * ${a} + 0.25 * min(${b}, ${c})`,
  ],
];

/** How far back a formula reads: a sheet's length, as books are linked. */
const REACH = 60;

/** The graph of `count` cells, always the same. */
export function sheetGraph(count: number): Graph {
  const draw = drawsFrom(count);
  const given = Math.floor(Math.min(count, REACH) / 3);
  const givens: number[] = [];
  const cells: GraphCell[] = [];
  // The givens of each sheet's length stand at its start, as on a page.
  for (let at = 0; at < count; at += 1) {
    if (at % REACH < given) {
      givens.push(at);
      continue;
    }
    const form = forms[draw(forms.length)];
    if (!form) throw new Error('no form');
    const [arity, ours, sheet, mathjs] = form;
    const reads = Array.from({ length: arity }, () => at - 1 - draw(Math.min(at, REACH)));
    const names = reads.map((read) => `x${read}`);
    const addresses = reads.map((read) => `A${read + 1}`);
    cells[at] = { reads, ours: ours(names), sheet: sheet(addresses), mathjs: mathjs(names) };
  }
  return { givens, cells };
}

/** The starting value of a given, metres. */
export function startOf(at: number): number {
  return 1 + ((at * 37) % 100) / 10;
}

/** A fixed sequence of edits of givens. */
export function graphEdits({ givens }: Graph, count: number): readonly (readonly [at: number, value: number])[] {
  const draw = drawsFrom(7);
  return Array.from({ length: count }, () => [givens[draw(givens.length)] ?? 0, 1 + draw(1000) / 100] as const);
}
