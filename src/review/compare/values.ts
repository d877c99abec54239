import { differenceOf, type Notebook, type Result, type Value, type Verdict } from '../../notebook/index.ts';
import { areEqual, type UnitRegistry } from '../../units/index.ts';
import type { CheckStanding, Size } from './difference.ts';

/** Whether two values are the same but for what rounding leaves, as formulas compare them. */
export function sameValue(a: Value, b: Value): boolean {
  if (a.kind === 'number' && b.kind === 'number')
    return (
      areEqual(a.si, b.si) && a.unit.dimension.key === b.unit.dimension.key && a.unit.point === b.unit.point
    );
  if (a.kind === 'text') return b.kind === 'text' && a.text === b.text;
  return a.kind === 'truth' && b.kind === 'truth' && a.truth === b.truth;
}

/** Whether two lines stand alike: with the same value, or without one for the same kind of reason. */
export function sameResult(a: Result, b: Result): boolean {
  if (a.status === 'ok') return b.status === 'ok' && sameValue(a.value, b.value);
  if (b.status === 'ok' || a.status !== b.status) return false;
  return a.status === 'missing' || b.status === 'missing' || a.problem.code === b.problem.code;
}

/** How far two values are apart; undefined where they are no numbers of one kind, or equal. */
export function sizeOfValues(
  from: Value | undefined,
  to: Value | undefined,
  registry: UnitRegistry,
): Size | undefined {
  if (from?.kind !== 'number' || to?.kind !== 'number') return undefined;
  if (from.unit.dimension.key !== to.unit.dimension.key || from.unit.point !== to.unit.point)
    return undefined;
  const absolute = differenceOf(to, from, registry);
  if (!absolute || absolute.si === 0) return undefined;
  const hasPart = from.unit.point === undefined && from.si !== 0;
  return { absolute, ...(hasPart && { relative: absolute.si / Math.abs(from.si) }) };
}

/** The value of a line that has one. */
export function valueIn(result: Result | undefined): Value | undefined {
  return result?.status === 'ok' ? result.value : undefined;
}

/** How a check stands, with what it rests on as far as that is known. */
export function checkStanding(notebook: Notebook, id: string): CheckStanding {
  const result = notebook.result(id);
  const verdict = notebook.verdict(id);
  if (verdict) return { word: wordOf(verdict, notebook.easedBy(id)?.data.only === true), verdict };
  if (result.status === 'ok' || result.status === 'missing') return { word: 'no value' };
  const word = result.status === 'inapplicable' ? 'does not apply' : 'no value';
  return { word, because: result.problem.message };
}

function wordOf({ holds, outOfRange }: Verdict, onlyByStated: boolean): CheckStanding['word'] {
  if (!holds) return 'fails';
  if (onlyByStated) return 'holds only by a stated value';
  return outOfRange ? 'holds, beyond range' : 'holds';
}

/** Whether a check stands alike: the same word, the same demand, the same capacity. */
export function sameStanding(a: CheckStanding, b: CheckStanding): boolean {
  if (a.word !== b.word) return false;
  return (['demand', 'capacity'] as const).every((side) => {
    const [x, y] = [a.verdict?.[side], b.verdict?.[side]];
    return x && y ? sameValue(x, y) : x === y;
  });
}
