import { type Problem, problem } from '../diagnostics/index.ts';
import type { Ledger } from './account.ts';
import { columnLetters, isNumeric } from './column.ts';
import { ordinarySigns } from './full-width.ts';
import type { TakenColumn } from './mapping.ts';
import { saysNone } from './nil-words.ts';
import type { Consents } from './reading.ts';
import type { TextRow } from './records.ts';

const NOWHERE = { from: 0, to: 0 };

/** A number in parentheses, as accounts write what is taken off; a sign of money or a unit may stand beside it. */
const PARENTHESES = /^([$€£]?)\s*\(\s*([$€£]?\s*[\d.,'’\s]*\d)\s*\)(\s*[\p{L}%‰°$€£].*)?$/su;

/** A number with its minus behind it, as programs of accounting write it. */
const MINUS_BEHIND = /^(\d(?:[\d.,'’´`\s]*\d)?\s*)[-−](\s*[\p{L}%‰°$€£].*)?$/su;

/** How a cell of a column of numbers can be read two ways. */
type Unclear = 'nil' | 'parentheses';

/** The problem that asks, and the remark that tells how it was taken. */
const CODES = {
  nil: { asked: 'cells-nil', taken: 'cells-nil-taken' },
  parentheses: { asked: 'cells-parentheses', taken: 'cells-parentheses-taken' },
} as const;

/** How a cell of a column of numbers can be read two ways; undefined where it cannot. */
export function unclearIn(cell: string): Unclear | undefined {
  if (/^\d/.test(cell)) return undefined;
  const text = ordinarySigns(cell.trim());
  if (saysNone(text)) return 'nil';
  return PARENTHESES.test(text) ? 'parentheses' : undefined;
}

/** A cell of a column of numbers as what was said makes it: `''` for blank; as written where nothing was said. */
export function clearedCell(cell: string, { nil, parentheses }: Consents): string {
  if (/^\d/.test(cell)) {
    const [, digits, unit = ''] = MINUS_BEHIND.exec(cell) ?? [];
    return digits === undefined ? cell : `-${digits}${unit}`;
  }
  const kind = unclearIn(cell);
  if (kind === 'nil' && nil !== undefined) return nil === 'zero' ? '0' : '';
  const [, money = '', inner = '', unit = ''] =
    (kind === 'parentheses' && parentheses !== undefined && PARENTHESES.exec(ordinarySigns(cell))) || [];
  return inner === '' ? cell : `${parentheses === 'minus' ? '-' : ''}${money}${inner}${unit}`;
}

/** What there is to say of unclear cells: the questions, or how they are taken; and the cells so taken. */
interface UnclearCells {
  readonly asked: readonly Problem[];
  readonly told: readonly Problem[];
  readonly cells: readonly (readonly [row: number, position: number])[];
}

/** Finds the cells of columns of numbers that can be read two ways, and refuses those on which nothing was said. */
export function unclearCells(
  taken: readonly TakenColumn[],
  rows: readonly TextRow[],
  consents: Consents,
  ledger: Ledger,
): UnclearCells {
  const numeric = taken.filter(({ column }) => isNumeric(column));
  const found = { nil: [] as Place[], parentheses: [] as Place[] };
  for (const row of rows) {
    for (const one of numeric) {
      const kind = unclearIn(row.cells[one.position] ?? '');
      if (kind !== undefined) found[kind].push({ row, one });
    }
  }
  const asked: Problem[] = [];
  const told: Problem[] = [];
  const cells: (readonly [number, number])[] = [];
  for (const kind of ['nil', 'parentheses'] as const) {
    const [first] = found[kind];
    if (first === undefined) continue;
    const facts = factsOf(first, found[kind]);
    const said = consents[kind];
    const places = found[kind].map(({ row, one }) => [row.at, one.position] as const);
    if (said === undefined) {
      asked.push(problem(CODES[kind].asked, NOWHERE, facts));
      for (const [at, position] of places) ledger.write(at, position, 'refused');
    } else {
      told.push(problem(CODES[kind].taken, NOWHERE, { ...facts, said }));
      cells.push(...places);
    }
  }
  return { asked, told, cells };
}

interface Place {
  readonly row: TextRow;
  readonly one: TakenColumn;
}

function factsOf({ row, one }: Place, all: readonly Place[]) {
  return {
    line: row.line,
    lines: all.map((place) => place.row.line),
    letter: columnLetters(one.position),
    header: one.header,
    column: one.column.name,
    text: row.cells[one.position]?.trim() ?? '',
    more: all.length - 1,
  };
}
