import type { LoweringTools, Typed } from '../../language/index.ts';
import type { GridPlace } from '../grid.ts';
import type { BookPlan } from './plan.ts';
import type { Helpers, Site } from './site.ts';
import type { Hazard } from './watched.ts';

/** Lowers the parts of one formula. */
export interface Lowerer {
  readonly plan: BookPlan;
  readonly helpers: Helpers;
  /** `sheet.table` of a column's formula. */
  readonly table: string | undefined;
  /** A part as formula text that needs no parentheses around it. */
  readonly lower: (node: Typed, site: Site) => string;
  /** The same, short or put into a cell of its own, for those that write it more than once. */
  readonly operand: (node: Typed, site: Site) => string;
  /** The same for those that write it once: in a cell of its own if it is long and the same for all rows. */
  readonly writtenOnce: (node: Typed, site: Site) => string;
  /** Formula text as it is, or the cell it was put into if it is long. */
  readonly shortened: (formula: string, site: Site) => string;
  /** A part as the address of a cell. */
  readonly cell: (node: Typed, site: Site) => string;
  /** What depends on no row, lowered once for the formula: the address of its cell. */
  readonly once: (node: Typed, write: () => string) => string;
  /** What depends only on the row of a column's formula, lowered once for the row: the address of its cell. */
  readonly onceARow: (node: Typed, site: Site, write: (site: Site) => string) => string;
  /** The cell of a running value on a row, which was made before the row was lowered. */
  readonly running: (node: Typed, row: number) => string;
  /** A helper cell. */
  readonly helper: Helpers['cell'];
  readonly tools: (site: Site) => LoweringTools;
  /** Remembers a cell on whose value it hangs whether the result can be compared. */
  readonly watch: (hazard: Hazard, place: GridPlace, row: number | undefined) => void;
}
