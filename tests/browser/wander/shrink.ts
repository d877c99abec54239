import type { Browser } from 'playwright-core';
import { stateOf } from './judge.ts';
import type { Step } from './kind.ts';
import { type Failure, openDesk, takeStep } from './walk.ts';

/** What makes two failures the same one: the step that fails, and in what. */
export function signOf({ steps, what }: Pick<Failure, 'steps' | 'what'>): string {
  return `${steps.at(-1)?.kind ?? 'nothing'}: ${what}`;
}

/** Does steps anew from the opened book; the failure with this sign, with the steps that could be done up to it. */
async function replay(
  browser: Browser,
  address: string,
  { book, steps }: Pick<Failure, 'book' | 'steps'>,
  sign: string,
): Promise<Failure | undefined> {
  const desk = await openDesk(browser, address, book);
  try {
    let seen = await desk.eyes.look();
    let state = { ...stateOf(seen), pastKnown: true };
    const done: Step[] = [];
    for (const step of steps) {
      const taken = await takeStep(desk, step, state, seen);
      seen = taken?.seen ?? (await desk.eyes.look());
      if (!taken) continue;
      done.push(step);
      if (taken.finding.kind === 'sound') ({ state } = taken.finding);
      else {
        const failure: Failure = { book, steps: done, what: taken.finding.what, lines: taken.finding.lines };
        if (signOf(failure) === sign) return { ...failure, steps: [...done] };
        state = stateOf(seen);
      }
    }
    return undefined;
  } finally {
    await desk.close();
  }
}

/**
 * A failure with as few steps as lead to it: first the last few steps alone are tried, from the sheet they were done on,
 * then every part of them is left out in turn, larger parts first. Each trial begins with the book as opened. A failure
 * that does not come again is given as it is.
 */
export async function shrink(
  browser: Browser,
  address: string,
  failure: Failure,
  trials = 40,
): Promise<Failure & { readonly repeats: boolean }> {
  const sign = signOf(failure);
  let left = trials;
  const tried = async (steps: readonly Step[]): Promise<Failure | undefined> => {
    if (left <= 0) return undefined;
    left -= 1;
    return replay(browser, address, { book: failure.book, steps }, sign);
  };
  const { steps } = failure;
  let best: Failure | undefined;
  for (const length of [3, 8, 20, 60]) {
    if (length >= steps.length || best) break;
    best = await tried([...ground(steps.slice(0, -length)), ...steps.slice(-length)]);
  }
  best ??= await tried(steps);
  if (!best) return { ...failure, repeats: false };
  let size = Math.ceil(best.steps.length / 2);
  while (size >= 1 && left > 0) {
    let shorter = false;
    for (let from = best.steps.length - 1 - size; from > -size && left > 0; from -= size) {
      const rest: readonly Step[] = best.steps.filter(
        (_, at) => at < from || at >= from + size || at === (best?.steps.length ?? 0) - 1,
      );
      if (rest.length === best.steps.length) continue;
      const found = await tried(rest);
      if (found && found.steps.length < best.steps.length) {
        best = found;
        shorter = true;
      }
    }
    if (size === 1 && !shorter) break;
    size = shorter && size === 1 ? 1 : Math.floor(size / 2);
  }
  return { ...best, repeats: true };
}

/** Of the steps before, the last ones that say which sheet is shown, and in which units. */
function ground(steps: readonly Step[]): readonly Step[] {
  return ['turn to a sheet', 'show units'].flatMap(
    (kind) => steps.findLast((step) => step.kind === kind) ?? [],
  );
}
