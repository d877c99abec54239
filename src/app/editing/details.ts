import { type Outcome, succeed } from '../../diagnostics/index.ts';
import {
  type Book,
  type Edit,
  joinEdits,
  type Option,
  type Range,
  setColumnField,
  setPartField,
  setRowField,
} from '../../document/index.ts';
import type { CellPlace } from '../session/place.ts';
import type { Session } from '../session/session.ts';
import { type Found, findPlace } from './find-place.ts';
import { renameEdit } from './rename.ts';

/** What can be said of a line, column, table or text beyond its cells. */
export type DetailName =
  | 'name'
  | 'label'
  | 'title'
  | 'type'
  | 'unit'
  | 'min'
  | 'max'
  | 'optional'
  | 'options'
  | 'from'
  | 'role'
  | 'note';

/** The details of a thing as texts; `optional` is `yes` or empty, `options` one a line, `value = words`. */
export type Details = Readonly<Partial<Record<DetailName, string>>>;

/** The details of the thing at a place; empty where there are none. */
export function detailsAt(book: Book, place: CellPlace): Details {
  const found = findPlace(book, place);
  if (!found || found.kind === 'cell') return {};
  if (found.kind === 'prose') return { role: found.part.role };
  if (found.kind === 'title')
    return found.part.kind === 'table' ? { name: found.part.name, title: found.part.title ?? '' } : {};
  const one = lineOf(found);
  const named = found.kind === 'column' ? { name: one.name, label: one.label ?? '' } : {};
  return {
    ...named,
    ...(found.kind === 'column' && one.kind === 'given' && { type: ('type' in one && one.type) || 'number' }),
    ...((found.kind === 'column' || one.kind === 'check') && { unit: ('unit' in one && one.unit) || '' }),
    ...(one.kind === 'choice' &&
      one.options !== undefined && { options: one.options.map(optionText).join('\n') }),
    ...(one.kind === 'choice' && one.from !== undefined && { from: one.from }),
    ...(one.kind === 'given' && { min: one.range?.min ?? '', max: one.range?.max ?? '' }),
    ...((one.kind === 'given' || one.kind === 'choice') && { optional: one.optional ? 'yes' : '' }),
    note: one.note ?? '',
  };
}

const lineOf = (found: Extract<Found, { kind: 'row' | 'column' }>) =>
  found.kind === 'row' ? found.row : found.column;

const optionText = ({ value, label }: Option): string =>
  label === undefined || label === '' ? value : `${value} = ${label}`;

function optionsFrom(text: string): readonly Option[] {
  return text.split('\n').flatMap((line) => {
    const at = line.indexOf(' = ');
    const value = (at < 0 ? line : line.slice(0, at)).trim();
    const label = at < 0 ? '' : line.slice(at + 3).trim();
    return value === '' ? [] : [label === '' ? { value } : { value, label }];
  });
}

/** The edit that puts changed details in place; undefined if none changed. A new name goes into every formula. */
export function detailsEdit(
  session: Pick<Session, 'notebook'>,
  place: CellPlace,
  wanted: Details,
): Outcome<Edit | undefined> {
  const { book } = session.notebook;
  const found = findPlace(book, place);
  const now = detailsAt(book, place);
  const names = (Object.keys(now) as DetailName[]).filter((name) => (wanted[name] ?? '') !== now[name]);
  if (!found || names.length === 0) return succeed(undefined);
  const edits: Edit[] = [];
  for (const name of names.filter((one) => one !== 'name' && one !== 'min' && one !== 'max')) {
    const edit = fieldEdit(place, found, name, (wanted[name] ?? '').trim());
    if (edit) edits.push(edit);
  }
  if (names.includes('min') || names.includes('max')) {
    const edit = setField(place, found, 'range', rangeFrom(wanted));
    if (edit) edits.push(edit);
  }
  if (names.includes('name')) {
    const renamed = renameEdit(session, place, wanted.name ?? '');
    if (!renamed.ok) return renamed;
    edits.push(renamed.value);
  }
  return succeed(joinEdits('change details', edits));
}

function rangeFrom({ min = '', max = '' }: Details): Range | undefined {
  const range = { ...(min.trim() && { min: min.trim() }), ...(max.trim() && { max: max.trim() }) };
  return Object.keys(range).length === 0 ? undefined : range;
}

function fieldEdit(
  place: CellPlace,
  found: Found,
  name: Exclude<DetailName, 'name' | 'min' | 'max'>,
  text: string,
): Edit | undefined {
  if (name === 'optional') return setField(place, found, name, text === 'yes' ? true : undefined);
  if (name === 'options') return setField(place, found, name, optionsFrom(text));
  return setField(place, found, name, text === '' ? undefined : text);
}

function setField(
  { sheet }: CellPlace,
  found: Found,
  name: Exclude<DetailName, 'name' | 'min' | 'max'> | 'range',
  value: string | true | Range | readonly Option[] | undefined,
): Edit | undefined {
  const part = found.part.id;
  if (found.kind === 'row') return setRowField({ sheet, part, row: found.row.id }, name as 'note', value);
  if (found.kind === 'column')
    return setColumnField({ sheet, table: part, column: found.column.id }, name as 'note', value);
  return found.kind === 'cell' ? undefined : setPartField({ sheet, part }, name as 'title', value);
}
