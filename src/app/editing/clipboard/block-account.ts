import type { Fate } from '../../../tables/index.ts';
import { accountNumbers } from './account.ts';
import type { Block } from './block.ts';

/**
 * What became of the cells of a block where they were put, one by one: “4 cells: 3 taken, 1 marked”, of a block that
 * was repeated “1 cell repeated over 6 cells: 2 taken, 4 marked”. Cells with nothing in them are not counted.
 */
export function blockAccount(
  pasted: Block['cells'],
  put: Block['cells'],
  fateAt: (down: number, right: number) => Fate,
): string {
  const counts: Partial<Record<Fate, number>> = {};
  for (const [down, row] of put.entries()) {
    for (const [right, cell] of row.entries()) {
      if (cell.trim() === '') continue;
      const fate = fateAt(down, right);
      counts[fate] = (counts[fate] ?? 0) + 1;
    }
  }
  const numbers = accountNumbers(counts);
  if (sizeOf(put) <= sizeOf(pasted)) return numbers;
  const once = pasted.flat().filter((cell) => cell.trim() !== '').length;
  return `${once === 1 ? '1 cell' : `${once} cells`} repeated over ${numbers}`;
}

function sizeOf(block: Block['cells']): number {
  return block.reduce((sum, row) => sum + row.length, 0);
}
