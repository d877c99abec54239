import { fail, type Outcome, problem, succeed } from '../../../diagnostics/index.ts';
import {
  applyEdit,
  type Book,
  type Edit,
  findSheet,
  freshFor,
  joinEdits,
  type Part,
  type Sheet,
} from '../../../document/index.ts';
import { type CopiedParts, partsToPut } from '../../../notebook/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { type Change, insertPartBelow, insertRows } from '../lines/line-edits.ts';
import { type LinesGo, roomOf } from './paste-lines.ts';

/**
 * The parts of a sheet in which places are selected: blocks with the lines selected, tables, words and pictures whole.
 * None where all that is selected are rows of one table or words of one kind, which are cells; a chart only with its table.
 */
export function pickParts(sheet: Sheet, places: readonly CellPlace[], areLines: boolean): readonly Part[] {
  const picked = sheet.parts.flatMap((part): Part[] => {
    const here = places.filter((place) => place.part === part.id);
    if (here.length === 0) return [];
    if (part.kind !== 'rows') return [part];
    const items = new Set(here.map(({ item }) => item));
    const rows = part.rows.filter(({ id }) => items.has(id));
    const { title, ...untitled } = part;
    return rows.length === 0 ? [] : [{ ...(areLines || !items.has('') ? untitled : part), rows }];
  });
  const tables = new Set(picked.flatMap((part) => (part.kind === 'table' ? [part.name] : [])));
  const whole = picked.filter((part) => part.kind !== 'chart' || tables.has(part.table));
  return whole.length > 1 || whole[0]?.kind === 'rows' ? whole : [];
}

/**
 * Puts copies of parts below a place, or in place of lines; lines by themselves join the block that they are put in. What
 * they take from sheets that do not come along comes with them, to be linked.
 */
export function pasteParts(
  book: Book,
  go: LinesGo,
  copied: CopiedParts,
  { over, areLines }: { readonly over: readonly CellPlace[]; readonly areLines: boolean },
): Outcome<Change> {
  const room = over.length > 0 ? roomOf(book, over) : undefined;
  const start = room?.without ?? book;
  const to = room?.to ?? go;
  const sheet = findSheet(start, to.sheet);
  if (!sheet)
    return fail(problem('edit-place-unfit', { from: 0, to: 0 }, { path: to.sheet, expected: 'a sheet' }));
  const fresh = freshFor(start, sheet);
  const put = partsToPut(start, to.sheet, copied, fresh);
  if (!put.ok) return put;
  const edits: Edit[] = [...(room?.removals ?? []), ...put.value.settings];
  let now = start;
  let below = to.place;
  let first: CellPlace | undefined;
  const add = (change: Change | undefined): boolean => {
    const applied = change && applyEdit(now, change.edit);
    if (!change || !applied?.ok) return false;
    edits.push(change.edit);
    now = applied.value.book;
    first ??= change.place;
    return true;
  };
  const rows = put.value.parts.flatMap((part) => (part.kind === 'rows' ? part.rows : []));
  const parts = areLines ? put.value.parts.filter(({ kind }) => kind !== 'rows') : put.value.parts;
  const label = areLines ? `paste ${rows.length === 1 ? 'a line' : `${rows.length} lines`}` : 'paste parts';
  if (areLines && !add(insertRows(now, to.sheet, below, rows, fresh, label))) return unfit(to.sheet);
  for (const part of parts) {
    if (!add(insertPartBelow(now, to.sheet, areLines ? undefined : below, part, label, fresh)))
      return unfit(to.sheet);
    below = { sheet: to.sheet, part: part.id, item: '', field: 'title' };
  }
  return succeed({ edit: joinEdits(label, edits), ...(first && { place: first }) });
}

function unfit(path: string): Outcome<never> {
  return fail(
    problem('edit-place-unfit', { from: 0, to: 0 }, { path, expected: 'a place for what was copied' }),
  );
}
