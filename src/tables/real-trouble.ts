import { type Problem, quoted } from '../diagnostics/index.ts';
import type { CellCheck } from './reading.ts';

/** How many units of one cell are mended one after the other. */
const STEPS = 6;

/**
 * What is wrong with a cell: where the one unit that a slip stands for would not be read there either, not the slip, but
 * what is wrong without it. `12 SY` among volumes is an area, and `40 CY bank` is no better as `40 cy bank`. Says it of
 * the cell as it is written.
 */
export function realTrouble(found: Problem, column: string, cell: string, check: CellCheck): Problem {
  let now = found;
  let text = cell;
  for (let step = 0; step < STEPS; step += 1) {
    const [fix, ...more] = now.fixes;
    // Of several units, and of names that are only near, nobody can say which is meant.
    if (now.code !== 'unit-slip' || fix === undefined || more.length > 0) break;
    const mended = `${text.slice(0, fix.from)}${fix.insert}${text.slice(fix.to)}`;
    const trouble = check(column, mended);
    if (trouble?.severity !== 'error') break;
    now = trouble;
    text = mended;
  }
  return now === found ? found : { ...now, message: now.message.replaceAll(quoted(text), quoted(cell)) };
}
