import { type Problem, problem } from '../diagnostics/index.ts';
import { apartFromComputed } from './apart-from-computed.ts';
import type { FormulaColumnItem, Item } from './model.ts';
import { readValue } from './read-result.ts';
import type { ColumnResult, Result } from './result.ts';
import { isReasonOpen, SIDES, type Side, type Stated } from './stated.ts';

/** What a stated line or side, or the formula of a column with stated cells, would come to; see the notebook's own. */
interface Computed {
  readonly computed: (id: string, side?: Side) => Result | undefined;
  readonly computedColumn: (id: string) => ColumnResult | undefined;
}

/**
 * What is wrong with a line or column by itself, before its value is looked at. Where a value is stated, a formula that
 * fails is a remark: the value stands.
 */
export function ownProblems(item: Item, { computed, computedColumn }: Computed): readonly Problem[] {
  switch (item.kind) {
    case 'input':
    case 'input column':
      return item.problems;
    case 'formula column':
      return item.cells
        ? [
            ...item.problems,
            ...item.checked.problems.map(remark),
            ...openReasons(item.cells),
            ...cellsApart(item, item.cells, computedColumn(item.id)),
          ]
        : [...item.problems, ...item.checked.problems];
    case 'formula': {
      const failing = (side?: Side): readonly Problem[] => {
        const result = computed(item.id, side);
        return result?.status === 'problem' ? [remark(result.problem)] : [];
      };
      if (item.stated)
        return [
          ...item.problems,
          ...item.stated.problems,
          ...failing(),
          ...apartFromComputed(item.stated, computed(item.id)),
        ];
      const sides = SIDES.flatMap((side) => {
        const stated = item.sides?.[side];
        if (!stated) return [];
        return [...stated.problems, ...failing(side), ...apartFromComputed(stated, computed(item.id, side))];
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

/** The stated cells of a column that are far from their computed ones: how many, and the first of them. */
function cellsApart(
  { checked }: FormulaColumnItem,
  cells: ReadonlyMap<number, Stated>,
  computed: ColumnResult | undefined,
): readonly Problem[] {
  if (checked.problems.length > 0 || computed?.status !== 'ok') return [];
  const { reading, unit } = computed;
  const apart = [...cells].flatMap(([row, stated]) => {
    const read = reading.at(row);
    const below: Result = read.status === 'ok' ? { status: 'ok', value: readValue(read.value, unit) } : read;
    return apartFromComputed(stated, below).map(({ message }) => ({ row: row + 1, message }));
  });
  const [first] = apart;
  return first ? [problem('stated-cells-far', NOWHERE, { cells: apart.length, ...first })] : [];
}
