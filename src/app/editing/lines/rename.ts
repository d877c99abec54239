import { fail, type Outcome, type Problem, problem, succeed } from '../../../diagnostics/index.ts';
import {
  type Book,
  type Edit,
  joinEdits,
  NAME_LENGTH_LIMIT,
  NAME_PATTERN,
  type Sheet,
  setColumnField,
  setPartField,
  setRowField,
  type Table,
} from '../../../document/index.ts';
import { findFunction } from '../../../language/index.ts';
import {
  type Names,
  type Notebook,
  namesOf,
  type Respell,
  resolveName,
  usesInPart,
} from '../../../notebook/index.ts';
import { normaliseLookAlikes } from '../../../units/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { findPlace } from '../find-place.ts';

/** What is renamed: its full id, its sheet, and the edit of the name itself. */
interface Target {
  readonly kind: 'row' | 'table' | 'column';
  readonly id: string;
  readonly sheet: Sheet;
  readonly name: string;
  /** The table of a column. */
  readonly table?: Table;
  readonly edit: (name: string) => Edit;
}

/**
 * The edit that gives a line, a column or a table (the place of its title) another name, in every formula, chart,
 * sketch and list of options that says it, on all sheets. A misspelt or taken name is refused.
 */
export function renameEdit(
  session: { readonly notebook: Notebook },
  place: CellPlace,
  newName: string,
): Outcome<Edit> {
  const { book } = session.notebook;
  const name = normaliseLookAlikes(newName).normalize('NFC').trim();
  const target = targetAt(book, place);
  if (!target)
    return fail(
      problem('edit-place-unfit', nowhere, { path: place.item, expected: 'something with a name' }),
    );
  const refused = refusal(book, target, name);
  if (refused) return fail(refused);
  const label = `rename ${target.name} to ${name}`;
  if (name === target.name) return succeed({ label, patches: [] });
  const respell = respelling(namesOf(book), target, name);
  const uses = book.sheets.flatMap((sheet) =>
    sheet.parts.flatMap((part) => usesInPart(sheet.key, part, respell)),
  );
  return succeed(joinEdits(label, [...uses, target.edit(name)]));
}

const nowhere = { from: 0, to: 0 };

function targetAt(book: Book, place: CellPlace): Target | undefined {
  const found = findPlace(book, place);
  if (found?.kind === 'row') {
    const { sheet, row, part } = found;
    const at = { sheet: sheet.key, part: part.id, row: row.id };
    const edit = (name: string) => setRowField(at, 'name', name);
    return { kind: 'row', id: `${sheet.key}.${row.name}`, sheet, name: row.name, edit };
  }
  if (found?.kind === 'column') {
    const { sheet, part: table, column } = found;
    const at = { sheet: sheet.key, table: table.id, column: column.id };
    const edit = (name: string) => setColumnField(at, 'name', name);
    const id = `${sheet.key}.${table.name}.${column.name}`;
    return { kind: 'column', id, sheet, name: column.name, table, edit };
  }
  if (found?.kind !== 'title' || found.part.kind !== 'table') return undefined;
  const { sheet, part } = found;
  const edit = (name: string) => setPartField({ sheet: sheet.key, part: part.id }, 'name', name);
  return { kind: 'table', id: `${sheet.key}.${part.name}`, sheet, name: part.name, edit };
}

/** What has a name that a table cannot have, wherever the table is. */
const A_SHEET = 'a sheet';

/** What is wrong with a new name by itself: its length, its spelling, that formulas have the word already. */
export function nameRefusal(name: string): Problem | undefined {
  const span = { from: 0, to: name.length };
  if (name.length > NAME_LENGTH_LIMIT) {
    const facts = { path: 'the new symbol', length: name.length, limit: NAME_LENGTH_LIMIT, of: 'character' };
    return problem('book-too-long', span, facts);
  }
  if (!NAME_PATTERN.test(name)) return problem('book-name-spelling', span, { path: 'the new symbol', name });
  if (findFunction(name) || /^(?:true|false)$/i.test(name)) return problem('rename-reserved', span, { name });
  return undefined;
}

function refusal(book: Book, target: Target, name: string): Problem | undefined {
  const refused = nameRefusal(name);
  if (refused) return refused;
  const span = { from: 0, to: name.length };
  const by = name === target.name ? undefined : bearerOf(book, target, name);
  if (by === undefined) return undefined;
  return problem('rename-taken', span, {
    name,
    by,
    ...(by !== A_SHEET && { sheet: target.sheet.title || target.sheet.key }),
  });
}

/** What has the name already, where it may not be shared. */
function bearerOf(book: Book, { kind, sheet, table }: Target, name: string): string | undefined {
  if (kind === 'table' && book.sheets.some(({ key }) => key === name)) return A_SHEET;
  for (const part of sheet.parts) {
    if (part.kind === 'rows' && part.rows.some((row) => row.name === name)) return 'another line';
    if (part.kind !== 'table') continue;
    if (part.name === name) return 'a table';
    if (kind === 'column' && part.id !== table?.id) continue;
    if (part.columns.some((column) => column.name === name)) return `a column of ${part.name}`;
  }
  return undefined;
}

function respelling(names: Names, target: Target, name: string): Respell {
  return (written, sheet, table) => {
    const part = resolveName(written, names, sheet, table);
    if (!part) return undefined;
    const steps = written.split('.');
    const last = steps.length - 1;
    if (part.id === target.id) return [...steps.slice(0, last), name].join('.');
    const ofTable = part.kind === 'column' && `${part.sheet}.${part.table.name}` === target.id;
    if (!ofTable || last === 0) return undefined;
    return [...steps.slice(0, last - 1), name, steps[last]].join('.');
  };
}
