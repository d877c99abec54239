import type { TextRow } from './records.ts';

/**
 * What became of a cell of a text: it named a column or its unit; was taken; was taken with a remark; was left out by
 * consent; was refused; waits, because something else of the text is refused and nothing is taken until that is
 * settled; or there is nothing in it.
 */
export type Fate = (typeof FATES)[number];

const FATES = ['blank', 'held', 'heading', 'taken', 'marked', 'out', 'refused'] as const;

/** What became of one column of a text. */
export interface ColumnAccount {
  /** Counted from 0. */
  readonly position: number;
  readonly header: string;
  /** The column of the table it goes to, absent where it goes nowhere. */
  readonly column?: string;
  /** The column of the table whose numbers it has the units of, row by row. */
  readonly unitOf?: string;
  /** The unit of its plain numbers as stated by the text, `''` for that of the column. */
  readonly unit: string;
}

/** What became of every cell of a text. The counts are of the cells one by one, so they add up to `cells`. */
export interface Account {
  readonly cells: number;
  readonly counts: Readonly<Record<Fate, number>>;
  readonly columns: readonly ColumnAccount[];
  /** The line of the text at which each row of the table starts. */
  readonly lines: readonly number[];
  /** Rows with nothing in them, which are left out. */
  readonly blankRows: number;
  /** What became of a cell, by the rows of the text and the position in it, both counted from 0. */
  readonly fateAt: (row: number, position: number) => Fate;
}

/** The fates of the cells of a text while it is read. A cell that is not written of is held; a blank one is blank. */
export interface Ledger {
  /** Writes the fate of a cell, if there is anything in it. */
  readonly write: (row: number, position: number, fate: Fate) => void;
  readonly writeRow: (row: number, fate: Fate) => void;
  readonly fateAt: (row: number, position: number) => Fate;
  readonly counts: () => Readonly<Record<Fate, number>>;
  /** Turns what was taken into what waits: nothing of a text is taken unless all of it can be. */
  readonly holdBack: () => void;
}

/** One fate for each cell of the rows: a byte a cell, so that a long table costs little. */
export function openLedger(rows: readonly TextRow[]): Ledger {
  const starts = new Int32Array(rows.length + 1);
  for (const [at, { cells }] of rows.entries()) starts[at + 1] = (starts[at] ?? 0) + cells.length;
  const fates = new Uint8Array(starts[rows.length] ?? 0);
  const [blank, held] = [FATES.indexOf('blank'), FATES.indexOf('held')];
  for (const [at, { cells }] of rows.entries()) {
    const start = starts[at] ?? 0;
    for (const [position, cell] of cells.entries()) {
      fates[start + position] = cell.trim() === '' ? blank : held;
    }
  }
  const write = (row: number, position: number, fate: Fate): void => {
    const at = (starts[row] ?? 0) + position;
    if (at < (starts[row + 1] ?? 0) && fates[at] !== blank) fates[at] = FATES.indexOf(fate);
  };
  return {
    write,
    writeRow: (row, fate) => {
      const width = (starts[row + 1] ?? 0) - (starts[row] ?? 0);
      for (let position = 0; position < width; position += 1) write(row, position, fate);
    },
    fateAt: (row, position) => FATES[fates[(starts[row] ?? 0) + position] ?? blank] ?? 'blank',
    counts: () => {
      const counts = FATES.map(() => 0);
      for (const fate of fates) counts[fate] = (counts[fate] ?? 0) + 1;
      return Object.fromEntries(FATES.map((name, at) => [name, counts[at] ?? 0])) as Record<Fate, number>;
    },
    holdBack: () => {
      const [taken, marked] = [FATES.indexOf('taken'), FATES.indexOf('marked')];
      for (const [at, fate] of fates.entries()) if (fate === taken || fate === marked) fates[at] = held;
    },
  };
}
