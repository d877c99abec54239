import { fail, type Outcome, succeed } from '../../../diagnostics/index.ts';
import {
  type Book,
  type Chart,
  type Edit,
  findSheet,
  joinEdits,
  type Option,
  type Range,
  setColumnField,
  setEntry,
  setPartField,
  setRowField,
} from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { valueAsUnit } from '../cells/cell-edits.ts';
import { optionsCompared } from '../choices/options-compared.ts';
import { optionsFrom, optionText } from '../choices/options-text.ts';
import { followOptions } from '../choices/rename-options.ts';
import { type Found, findPlace } from '../find-place.ts';
import { chartTables, chartTrouble, type Drawn, usualColumns } from './chart-columns.ts';
import { renameEdit } from './rename.ts';

/** What can be said of a line, column, table, chart or text beyond its cells. */
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
  | 'form'
  | 'table'
  | 'x'
  | 'y'
  | 'applies'
  | 'note';

/** The details of a thing as texts; `optional` is `yes` or empty, `options` one a line, `value = words`, and
 * the columns in `y` one a line. */
export type Details = Readonly<Partial<Record<DetailName, string>>>;

/** The details of the thing at a place; empty where there are none. */
export function detailsAt(book: Book, place: CellPlace): Details {
  const found = findPlace(book, place);
  if (!found || found.kind === 'cell') return {};
  if (found.kind === 'prose') return { role: found.part.role };
  if (found.kind === 'title') return titleDetails(found.part);
  const one = lineOf(found);
  const named = found.kind === 'column' ? { name: one.name, label: one.label ?? '' } : {};
  return {
    ...named,
    ...(found.kind === 'column' && one.kind === 'given' && { type: ('type' in one && one.type) || 'number' }),
    ...((found.kind === 'column' || one.kind === 'check') && { unit: ('unit' in one && one.unit) || '' }),
    ...(one.kind === 'choice' &&
      one.options !== undefined && { options: one.options.map(optionText).join('\n') }),
    ...(one.kind === 'choice' && one.from !== undefined && { from: one.from }),
    ...((one.kind === 'given' || (one.kind === 'calc' && !('link' in one))) && {
      min: one.range?.min ?? '',
      max: one.range?.max ?? '',
    }),
    ...((one.kind === 'given' || one.kind === 'choice') && { optional: one.optional ? 'yes' : '' }),
    ...(one.kind === 'check' && { applies: one.applies ?? '' }),
    note: one.note ?? '',
  };
}

function titleDetails(part: Extract<Found, { kind: 'title' }>['part']): Details {
  const title = part.title ?? '';
  if (part.kind === 'table') return { name: part.name, title };
  if (part.kind !== 'chart') return {};
  return { title, form: part.form, table: part.table, x: part.x, y: part.y.join('\n') };
}

const ofChart: readonly DetailName[] = ['form', 'table', 'x', 'y'];

/** What a chart with these details draws. */
export function drawnBy({ form, table = '', x = '', y = '' }: Details): Drawn {
  return { form: form as Chart['form'], table, x, y: y.split('\n').filter((name) => name !== '') };
}

/** The details of a chart with another table: its columns where that has them all, else the ones usual there. */
export function withTable(notebook: Notebook, sheet: string, details: Details, table: string): Details {
  const moved = { ...details, table };
  const part = chartTables(findSheet(notebook.book, sheet)).find(({ name }) => name === table);
  const { x, y } = drawnBy(details);
  if (!part || [x, ...y].every((name) => part.columns.some((one) => one.name === name))) return moved;
  const usual = usualColumns(notebook, sheet, part);
  return { ...moved, x: usual.x, y: usual.y.join('\n') };
}

const lineOf = (found: Extract<Found, { kind: 'row' | 'column' }>) =>
  found.kind === 'row' ? found.row : found.column;

/** The options a choice or column lists itself, and its id. */
function listedOptions(
  { sheet }: CellPlace,
  found: Found,
): { readonly id: string; readonly options: readonly Option[] } | undefined {
  if (found.kind === 'row' && found.row.kind === 'choice')
    return { id: `${sheet}.${found.row.name}`, options: found.row.options ?? [] };
  if (found.kind === 'column' && found.column.kind === 'given')
    return {
      id: `${sheet}.${found.part.name}.${found.column.name}`,
      options: (found.column.options ?? []).map((value) => ({ value })),
    };
  return undefined;
}

/** The edit that puts changed details in place; undefined if none changed. A new name goes into every formula. */
export function detailsEdit(
  { notebook }: { readonly notebook: Notebook },
  place: CellPlace,
  wanted: Details,
): Outcome<Edit | undefined> {
  const { book } = notebook;
  const found = findPlace(book, place);
  const now = detailsAt(book, place);
  const names = (Object.keys(now) as DetailName[]).filter((name) => (wanted[name] ?? '') !== now[name]);
  if (!found || names.length === 0) return succeed(undefined);
  if (names.some((name) => ofChart.includes(name))) {
    const trouble = chartTrouble(notebook, place.sheet, drawnBy(wanted));
    if (trouble) return fail(trouble);
  }
  if (names.includes('unit')) {
    const refused = valueAsUnit(now.name ?? '', wanted.unit ?? '');
    if (refused) return refused;
  }
  const edits: Edit[] = [];
  if (names.includes('options')) {
    const options = optionsFrom(wanted.options ?? '');
    if (!options.ok) return options;
    const listed = listedOptions(place, found);
    const compared = listed && optionsCompared(book, listed.id, listed.options, options.value);
    if (compared) return fail(compared);
    const edit = setField(place, found, 'options', options.value);
    if (edit) edits.push(edit);
    if (found.kind === 'row' && found.row.kind === 'choice') {
      const follow = followOptions(book, `${place.sheet}.${found.row.name}`, found.row, options.value);
      if (follow.entry !== undefined)
        edits.push(setEntry({ sheet: place.sheet, part: found.part.id, row: found.row.id }, follow.entry));
      edits.push(...follow.edits);
    }
  }
  for (const name of names.filter(isPlain)) {
    const edit = fieldEdit(place, found, name, (wanted[name] ?? '').trim());
    if (edit) edits.push(edit);
  }
  if (names.includes('min') || names.includes('max')) {
    const edit = setField(place, found, 'range', rangeFrom(wanted));
    if (edit) edits.push(edit);
  }
  if (names.includes('name')) {
    const renamed = renameEdit({ notebook }, place, wanted.name ?? '');
    if (!renamed.ok) return renamed;
    edits.push(renamed.value);
  }
  return succeed(joinEdits('change details', edits));
}

function rangeFrom({ min = '', max = '' }: Details): Range | undefined {
  const range = { ...(min.trim() && { min: min.trim() }), ...(max.trim() && { max: max.trim() }) };
  return Object.keys(range).length === 0 ? undefined : range;
}

/** A detail that is set from its text alone, and takes any. */
type PlainDetail = Exclude<DetailName, 'name' | 'min' | 'max' | 'options'>;

function isPlain(name: DetailName): name is PlainDetail {
  return name !== 'name' && name !== 'min' && name !== 'max' && name !== 'options';
}

function fieldEdit(place: CellPlace, found: Found, name: PlainDetail, text: string): Edit | undefined {
  if (name === 'optional') return setField(place, found, name, text === 'yes' ? true : undefined);
  if (name === 'y') return setField(place, found, name, drawnBy({ y: text }).y);
  return setField(place, found, name, text === '' ? undefined : text);
}

function setField(
  { sheet }: CellPlace,
  found: Found,
  name: Exclude<DetailName, 'name' | 'min' | 'max'> | 'range',
  value: string | true | Range | readonly Option[] | readonly string[] | undefined,
): Edit | undefined {
  const part = found.part.id;
  if (found.kind === 'row') return setRowField({ sheet, part, row: found.row.id }, name as 'note', value);
  if (found.kind === 'column')
    return setColumnField({ sheet, table: part, column: found.column.id }, name as 'note', value);
  return found.kind === 'cell' ? undefined : setPartField({ sheet, part }, name as 'title', value);
}
