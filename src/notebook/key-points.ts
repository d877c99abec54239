import { inCell, type Problem, problem } from '../diagnostics/index.ts';
import type { Model } from './model.ts';

/** What `key-not-found` says of a key that is entered. */
interface EnteredKey {
  readonly entered: string;
  readonly enteredRow: number | null;
  readonly argument: string;
  readonly value: string;
  readonly list: string;
  readonly nearest: string;
  readonly some: readonly string[];
  readonly more: number;
}

/**
 * The entered keys that stand in no row of a list: one problem for each entry and list, where it is entered, whatever number of
 * lines and columns look for it. `waiting` are the problems of what waits.
 */
export function keyPoints(waiting: readonly Problem[], model: Model): readonly Problem[] {
  const points = new Map<string, Problem>();
  for (const { data, ...found } of waiting.filter((one) => isToldByKey(one, model))) {
    const facts = data as unknown as EnteredKey;
    const { entered, enteredRow, value, list } = facts;
    const place = JSON.stringify([entered, enteredRow, list]);
    if (points.has(place)) continue;
    const told = problem('key-not-found', { from: 0, to: 0 }, { ...facts, row: enteredRow, argument: value });
    points.set(place, inCell({ ...told, severity: found.severity }, entered));
  }
  return [...points.values()];
}

/** Whether a problem is told where the key is entered that is looked for. */
export function isToldByKey({ code, data }: Problem, model: Model): boolean {
  return code === 'key-not-found' && typeof data.entered === 'string' && model.items.has(data.entered);
}
