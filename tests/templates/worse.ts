import { templateBook } from '../../src/cli/books.ts';
import { enterInTurn, lineNamed, type Notebook, openNotebook } from '../../src/notebook/index.ts';
import { enterDrawn } from './independent/enter.ts';
import type { Drawn, IndependentProgram } from './independent/program.ts';
import { randomFrom } from './independent/random.ts';

/** A way to make things worse, and the checks that may not turn from failing to holding by it. */
export interface Worse {
  readonly name: string;
  /** The inputs made worse; the same where this cannot be done to them. */
  readonly to: (drawn: Drawn) => Drawn;
  readonly checks: readonly string[];
}

/** Worse by a factor on a line. */
export function line(name: string, factor: number, checks: readonly string[]): Worse {
  const to = (drawn: Drawn): Drawn => {
    const value = drawn.lines[name];
    return typeof value === 'number'
      ? { ...drawn, lines: { ...drawn.lines, [name]: value * factor } }
      : drawn;
  };
  return { name, to, checks };
}

/** What came of it. */
export interface Turns {
  /** Checks that turned from failing to holding, each in words. */
  readonly turned: readonly string[];
  /** The ways at which a check was failing already, so that it could have turned. */
  readonly tried: ReadonlySet<string>;
}

/** Draws inputs of a template so many times, makes each worse in three ways, and compares how the checks stand. */
export function makeWorse(
  program: IndependentProgram,
  worse: readonly Worse[],
  { draws, seed }: { readonly draws: number; readonly seed: number },
): Turns {
  const book = templateBook(program.template);
  const notebook = openNotebook(book);
  const names = [...new Set(worse.flatMap(({ checks }) => checks))];
  const enter = enterInTurn(notebook);
  const stands = (drawn: Drawn): ReadonlyMap<string, string | undefined> => {
    const applied = enter(enterDrawn(book, program, drawn, randomFrom(seed)));
    if (!applied.ok) throw new Error(applied.problems[0]?.message);
    return new Map(names.map((name) => [name, standing(notebook, name)]));
  };
  const turned: string[] = [];
  const tried = new Set<string>();
  for (let draw = 0; draw < draws; draw += 1) {
    const random = randomFrom(seed + draw);
    const drawn = program.draw(random);
    const before = stands(drawn);
    // Only where a check fails already could it turn; ways that were not tried yet come first.
    const able = worse.filter(({ checks }) => checks.some((check) => before.get(check) === 'fails'));
    if (able.length === 0) continue;
    const open = able.filter(({ name }) => !tried.has(name));
    const first = random.of(open.length > 0 ? open : able);
    for (const { name, to, checks } of [first, random.of(able), random.of(able)]) {
      const made = to(drawn);
      if (made === drawn) continue;
      const after = stands(made);
      for (const check of checks) {
        if (before.get(check) !== 'fails') continue;
        tried.add(name);
        if (after.get(check) === 'holds') turned.push(`draw ${draw}: ${check} holds, worse by ${name}`);
      }
    }
  }
  return { turned, tried };
}

function standing(notebook: Notebook, name: string): string | undefined {
  const named = lineNamed(notebook.model, name);
  if (!named.ok) throw new Error(`there is no check ${name}`);
  const verdict = notebook.verdict(named.value.id);
  return verdict && (verdict.holds ? 'holds' : 'fails');
}
