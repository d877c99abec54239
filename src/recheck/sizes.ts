import type { CellNode, ColumnNode, PowerNode, Typed } from '../language/index.ts';
import type { EngineValues, RecheckCell, RecheckFormula, RecheckProgram } from './program.ts';
import { absolute, sizesOfCalls } from './sizes-of-calls.ts';

/** No name of a book has a space. */
const SIZE_OF = 'size of ';

/** The id under which the size of a cell stands beside it. */
export function sizeId(id: string): string {
  return SIZE_OF + id;
}

/** The engine's values, a cell's own for its size, which the engine does not know. */
export function valuesOfSizes(values: EngineValues): EngineValues {
  return (id, row) => values(id.startsWith(SIZE_OF) ? id.slice(SIZE_OF.length) : id, row);
}

/**
 * The program with, for some cells and for all they come from, a cell of the sum of the magnitudes they are a balance
 * of: every difference a sum, every operand its size.
 */
export function withSizes(program: RecheckProgram, ids: Iterable<string>): RecheckProgram {
  const formulas = new Map<string, RecheckFormula>();
  for (const cell of program.cells) if (cell.kind === 'formula') formulas.set(cell.id, cell);
  const sizes = new Map<string, RecheckFormula>();
  const waiting = [...ids];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    const cell = formulas.get(id);
    if (!cell || sizes.has(id) || !isNumeric(cell.tree)) continue;
    const tree = sizeOf(cell.tree, (reference) => {
      const source = formulas.get(reference.id);
      if (!source || !isNumeric(source.tree)) return absolute(reference);
      waiting.push(reference.id);
      return { ...reference, id: sizeId(reference.id) };
    });
    sizes.set(id, {
      kind: 'formula',
      id: sizeId(id),
      tree,
      ...(cell.table !== undefined && { table: cell.table }),
    });
  }
  const cells: readonly RecheckCell[] = [...program.cells, ...sizes.values()];
  return { ...program, cells };
}

function isNumeric({ type }: Typed): boolean {
  return type.kind === 'number' || type.kind === 'point';
}

function isPositive({ rational, exponent }: PowerNode): boolean {
  return rational ? rational.n > 0 : exponent.kind === 'number' && exponent.written > 0;
}

type Reference = CellNode | ColumnNode;
type Sized = (reference: Reference) => Typed;

/** The tree of the sum of magnitudes; types are of no interest to the lowering and are carried along. */
function sizeOf(node: Typed, sized: Sized): Typed {
  const size = (part: Typed): Typed => sizeOf(part, sized);
  switch (node.kind) {
    case 'cell':
    case 'column':
      return sized(node);
    case 'negate':
      return size(node.operand);
    case 'percent':
      return { ...node, operand: size(node.operand) };
    case 'arithmetic':
      if (node.op === '/') return { ...node, left: size(node.left), right: absolute(node.right) };
      return { ...node, op: node.op === '-' ? '+' : node.op, left: size(node.left), right: size(node.right) };
    case 'power':
      return isPositive(node) ? { ...node, base: size(node.base) } : absolute(node);
    case 'branch':
      return {
        ...node,
        arms: node.arms.map((arm) => ({ ...arm, value: size(arm.value) })),
        ...(node.otherwise && { otherwise: size(node.otherwise) }),
      };
    case 'above': {
      const column = sized(node.column);
      return column.kind === 'cell'
        ? { ...node, column, first: size(node.first) }
        : absolute({ ...node, first: size(node.first) });
    }
    case 'known': {
      const column = sized(node.column);
      return column.kind === 'column' ? { ...node, column } : node;
    }
    case 'call':
      return (sizesOfCalls[node.fn.name] ?? absolute)(node, size);
    default:
      return absolute(node);
  }
}
