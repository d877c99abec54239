import { type Book, columnAt, type Line, lineAt, type Place, partAt, tableRowAt, withPart } from './book.ts';

/** A value that stands in place of a computed one, and why. */
export interface Statement {
  readonly entry: string;
  readonly reason: string;
  /** For which value, or where, the reason was given, until it is confirmed for this one. */
  readonly reasonFor?: string | undefined;
}

/** A value stated where another may have stood, whose reason stays and says which value it was given for. */
export function statedAnew(before: Statement | undefined, entry: string): Statement {
  if (!before || before.reason.trim() === '') return { entry, reason: '' };
  const { reason, reasonFor = before.entry } = before;
  return reasonFor === entry ? { entry, reason } : { entry, reason, reasonFor };
}

/** A statement brought from elsewhere, whose reason says that it was given there; `seen` has the words for it. */
export function statedFrom(
  before: Statement | undefined,
  { entry, reason }: Statement,
  seen: Statement | undefined,
): Statement {
  if (reason.trim() === '') return { entry, reason: '' };
  if (before?.entry === entry && before.reason === reason) return before;
  return { entry, reason, reasonFor: seen?.reasonFor || 'another place' };
}

/** The two sides of a check, either of which may be stated. */
export const sides = ['demand', 'capacity'] as const;
export type Side = (typeof sides)[number];

/** What can be stated at a place: the value of a calculated line, the sides of a check, a cell of a calculated column. */
export function statableAt(book: Book, place: Place): 'line' | 'check' | 'cell' | undefined {
  const part = partAt(book, place);
  if (tableRowAt(book, place) !== undefined)
    return columnAt(book, place)?.kind === 'calc' && part?.length !== undefined ? 'cell' : undefined;
  const line = place.field === 'value' && part?.rows ? lineAt(book, place) : undefined;
  if (line?.kind === 'check') return 'check';
  return line?.kind === 'calc' ? 'line' : undefined;
}

/** Whether a place has a formula that a value could stand in place of. */
export function isComputedAt(book: Book, place: Place): boolean {
  const line = columnAt(book, place) ?? lineAt(book, place);
  const written = (line?.formula ?? '') !== '' || line?.methods !== undefined;
  return statableAt(book, place) !== undefined && written;
}

type BySide = Readonly<Partial<Record<Side, Statement | undefined>>>;

const alone = (stated: Line['stated']): Statement | undefined =>
  stated && 'entry' in stated ? stated : undefined;
const bySide = (stated: Line['stated']): BySide => (stated && !('entry' in stated) ? stated : {});

/** What is stated at a place; of a check one of its sides. */
export function statementAt(book: Book, place: Place, side?: Side): Statement | undefined {
  switch (statableAt(book, place)) {
    case 'cell':
      return columnAt(book, place)?.statedCells?.[tableRowAt(book, place) ?? -1] || undefined;
    case 'line':
      return alone(lineAt(book, place)?.stated);
    case 'check':
      return side && bySide(lineAt(book, place)?.stated)[side];
    case undefined:
      return undefined;
  }
}

/** The sides of a check that are stated. */
export function statedSides(book: Book, place: Place): readonly Side[] {
  return sides.filter((side) => statementAt(book, place, side) !== undefined);
}

/** Whether anything is stated at a place. */
export function isStatedAt(book: Book, place: Place): boolean {
  return statementAt(book, place) !== undefined || statedSides(book, place).length > 0;
}

/** The book with something stated at a place, or with nothing stated there any more. */
export function withStatement(book: Book, place: Place, statement: Statement | undefined, side?: Side): Book {
  const row = tableRowAt(book, place);
  const changed = (line: Line): Line => {
    if (row !== undefined && line.id === place.field)
      return { ...line, statedCells: (line.statedCells ?? []).with(row, statement ?? '') };
    if (row !== undefined || line.id !== place.item) return line;
    if (line.kind !== 'check') return { ...line, stated: statement };
    const { demand, capacity }: BySide = { ...bySide(line.stated), ...(side && { [side]: statement }) };
    return { ...line, stated: demand || capacity ? { demand, capacity } : undefined };
  };
  return withPart(book, place, (part) => ({
    ...part,
    ...(part.rows && { rows: part.rows.map(changed) }),
    ...(part.columns && { columns: part.columns.map(changed) }),
  }));
}

/** The book in which what is computed at a place is used again. */
export function withComputed(book: Book, place: Place): Book {
  const own = statableAt(book, place) === 'check' ? statedSides(book, place) : [undefined];
  return own.reduce((so, side) => withStatement(so, place, undefined, side), book);
}
