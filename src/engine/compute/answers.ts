import type { GatherEvaluator, GatherRefusal } from '../../language/index.ts';

/** What a function makes of the same columns for one call after the other. */
export interface Answers {
  /** The value for some elementwise arguments. */
  readonly of: (each: readonly number[]) => number;
  /** Why there is none; undefined where the function gives no reason. */
  readonly refuse: (each: readonly number[]) => GatherRefusal | undefined;
}

/** Answers calls on the same columns: the first few by a walk along them, and more of them by a search. */
export function answersOn(
  evaluate: GatherEvaluator,
  columns: readonly Float64Array[],
  options: readonly string[],
): Answers {
  const few = worthSorting(columns);
  let answered = 0;
  let refused = 0;
  let search: ReturnType<NonNullable<GatherEvaluator['search']>> | undefined;
  let refusals: ReturnType<NonNullable<GatherEvaluator['refuseMany']>> | undefined;
  return {
    of: (each) => {
      if (search) return search(each);
      answered += 1;
      if (answered > few) search = evaluate.search?.(columns, options);
      return evaluate.of(columns, each, options);
    },
    refuse: (each) => {
      if (refusals) return refusals(each);
      refused += 1;
      if (refused > few) refusals = evaluate.refuseMany?.(columns, options);
      return evaluate.refuse?.(columns, each, options);
    },
  };
}

/** How many calls on the same columns are answered before sorting them once is cheaper than walking along them. */
function worthSorting([first]: readonly Float64Array[]): number {
  return 2 * Math.log2((first?.length ?? 0) + 2);
}
