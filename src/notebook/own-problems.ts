import { type Problem, problem } from '../diagnostics/index.ts';
import type { Item } from './model.ts';
import type { Result } from './result.ts';
import { isReasonOpen, SIDES, type Side, type Stated } from './stated.ts';

/** What a stated line or side would come to; see the notebook's own. */
type Computed = (id: string, side?: Side) => Result | undefined;

/**
 * What is wrong with a line or column by itself, before its value is looked at. Where a value is stated, a formula that
 * fails is a remark: the value stands.
 */
export function ownProblems(item: Item, computed: Computed): readonly Problem[] {
  switch (item.kind) {
    case 'input':
    case 'input column':
      return item.problems;
    case 'formula column':
      return item.cells
        ? [...item.problems, ...item.checked.problems.map(remark), ...openReasons(item.cells)]
        : [...item.problems, ...item.checked.problems];
    case 'formula': {
      const failing = (side?: Side): readonly Problem[] => {
        const result = computed(item.id, side);
        return result?.status === 'problem' ? [remark(result.problem)] : [];
      };
      if (item.stated) return [...item.problems, ...item.stated.problems, ...failing()];
      const sides = SIDES.flatMap((side) => {
        const stated = item.sides?.[side];
        return stated ? [...stated.problems, ...failing(side)] : [];
      });
      return [...item.problems, ...item.checked.problems, ...sides];
    }
  }
}

const NOWHERE = { from: 0, to: 0 };

function remark({ message }: Problem): Problem {
  return problem('stated-formula-fails', NOWHERE, { message });
}

function openReasons(cells: ReadonlyMap<number, Stated>): readonly Problem[] {
  const open = [...cells].filter(([, { statement }]) => isReasonOpen(statement));
  const [first] = open;
  if (!first) return [];
  return [problem('stated-cells-without-reason', NOWHERE, { cells: open.length, first: first[0] + 1 })];
}
