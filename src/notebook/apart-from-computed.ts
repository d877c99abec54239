import { type Problem, problem } from '../diagnostics/index.ts';
import { areEqual, writeQuantity } from '../units/index.ts';
import type { Result } from './result.ts';
import type { Stated } from './stated.ts';

/** Beyond so many times the computed value, or below that part of it, a stated one is seldom what was meant. */
const FAR = 10;

const NOWHERE = { from: 0, to: 0 };

/**
 * What is open of a stated value beside what it stands in place of: that its sign is the other one, that it is far from
 * the computed value. Levels, dates and temperatures have no size to compare.
 */
export function apartFromComputed(
  { entry, problems }: Stated,
  computed: Result | undefined,
): readonly Problem[] {
  if (!entry || problems.some(({ severity }) => severity === 'error')) return [];
  const known = computed?.status === 'ok' && computed.value.kind === 'number' ? computed.value : undefined;
  if (entry.kind !== 'number' || !known || known.unit.point !== undefined) return [];
  if (!isApart(entry.si, known.si)) return [];
  const facts = {
    stated: writeQuantity(entry.si, known.unit),
    computed: writeQuantity(known.si, known.unit),
  };
  const code = entry.si * known.si < 0 ? 'stated-other-sign' : 'stated-far';
  return [problem(code, NOWHERE, facts)];
}

function isApart(stated: number, computed: number): boolean {
  if (stated * computed < 0) return true;
  const [less, more] = [Math.abs(stated), Math.abs(computed)].toSorted((a, b) => a - b) as [number, number];
  return more > FAR * less && !areEqual(more, FAR * less);
}
