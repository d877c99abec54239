import type { Book } from '../../../src/document/index.ts';
import { enterInTurn, openNotebook } from '../../../src/notebook/index.ts';
import { compareAll } from './compare.ts';
import { enterDrawn } from './enter.ts';
import type { Drawn, IndependentProgram, Verdict } from './program.ts';
import { randomFrom } from './random.ts';

/** How one result fared over all draws. */
export interface Tally {
  /** How often it was compared, how often both had a value, and how often they differed. */
  compared: number;
  valued: number;
  differed: number;
  /** The largest relative difference of two numbers that were found to agree. */
  worst: number;
  /** The first difference, with the draw it was in. */
  first?: Difference;
  /** How often a check stood so in the template and in the program. */
  readonly stands: Map<Verdict['verdict'], [template: number, program: number]>;
}

/** A difference, with all that is needed to see it again. */
export interface Difference {
  readonly words: string;
  readonly draw: number;
  readonly drawn: Drawn;
}

/**
 * Draws inputs so many times, enters them in the template's book, and compares every result with that of the program.
 * The draw `n` of a seed is the same however many are made.
 */
export function contest(
  book: Book,
  program: IndependentProgram,
  { draws, seed, first = 0 }: { readonly draws: number; readonly seed: number; readonly first?: number },
): ReadonlyMap<string, Tally> {
  const tallies = new Map<string, Tally>();
  const notebook = openNotebook(book);
  const enter = enterInTurn(notebook);
  for (let draw = first; draw < first + draws; draw += 1) {
    const drawn = program.draw(randomFrom(seed * 1_000_003 + draw));
    const applied = enter(enterDrawn(book, program, drawn, randomFrom(seed + draw)));
    if (!applied.ok) throw new Error(`draw ${draw}: ${applied.problems[0]?.message}`);
    for (const found of compareAll(notebook, program, program.work(drawn))) {
      const tally = tallies.get(found.name) ?? begin();
      tallies.set(found.name, tally);
      tally.compared += 1;
      if (found.valued) tally.valued += 1;
      if (found.difference === undefined) tally.worst = Math.max(tally.worst, found.off);
      else {
        tally.differed += 1;
        tally.first ??= { words: found.difference, draw, drawn };
      }
      if (found.stands) {
        const [template, own] = found.stands;
        standing(tally, template)[0] += 1;
        standing(tally, own)[1] += 1;
      }
    }
  }
  return tallies;
}

function begin(): Tally {
  return { compared: 0, valued: 0, differed: 0, worst: 0, stands: new Map() };
}

function standing({ stands }: Tally, verdict: Verdict['verdict']): [number, number] {
  const counts = stands.get(verdict) ?? [0, 0];
  stands.set(verdict, counts);
  return counts;
}
