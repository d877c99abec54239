import type { Table } from '../../../document/index.ts';
import { type Delimiter, looksLikeData, namedMapping } from '../../../tables/index.ts';
import type { UnitRegistry } from '../../../units/index.ts';
import { pastedText } from '../../editing/clipboard/pasted-text.ts';
import { isSingleNumber } from '../../editing/clipboard/single-number.ts';

/** What parts the cells of a text, and whether its first row names the columns. */
export interface Parting {
  /** Undefined where it is to be asked. */
  readonly delimiter: Delimiter | undefined;
  readonly headed: boolean;
}

/** How a pasted text is looked at first: parted as the page would, with a heading unless its first row is like data. */
export function guessParting(
  text: string,
  columns: Table['columns'],
  registry: UnitRegistry,
): Parting | undefined {
  if (isSingleNumber(text)) return { delimiter: '\t', headed: false };
  const parted = pastedText(text, columns, registry);
  if (!parted.ok) return undefined;
  const { text: rows, spaced } = parted.value;
  return {
    delimiter: spaced ? undefined : rows.delimiter,
    headed: namedMapping(rows, columns).goes.size > 0 || !looksLikeData(rows),
  };
}
