import {
  type Column,
  type Fresh,
  findSheet,
  freshFor,
  NAME_PATTERN,
  type Table,
} from '../../../document/index.ts';
import { findFunction } from '../../../language/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import {
  looksLikeData,
  type TableText,
  type TextColumn,
  textColumns,
  unitOfHeader,
} from '../../../tables/index.ts';
import { readUnit, type UnitRegistry } from '../../../units/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { type Change, insertPartBelow } from '../lines/line-edits.ts';
import { pastedText } from './pasted-text.ts';

/** How far down a text is looked at for what its columns hold. */
const LINES_LOOKED_AT = 200;

/** How much of a column without a unit must be numbers for it to hold numbers; under a unit one is enough. */
const MOSTLY = 0.6;

/** Headings of columns whose digits are marks, not numbers: 1.10 is not 1.1 there. */
const MARKS = /^(?:item|pos|ref|no|nr|id|code|mark|drawing|dwg)\b|^#/iu;

/**
 * The change that puts a table without rows below a place, or at the end of the sheet, whose columns are those of a text
 * of two rows or more under headings; its rows are for the dialog to take. Undefined where the text is none of that.
 */
export function insertTableFor(
  notebook: Notebook,
  sheetKey: string,
  place: CellPlace | undefined,
  text: string,
): Required<Change> | undefined {
  const { book, model } = notebook;
  const sheet = findSheet(book, sheetKey);
  if (!sheet) return undefined;
  const looked = text
    .split(/\r\n?|\n/)
    .slice(0, LINES_LOOKED_AT)
    .join('\n');
  const parted = pastedText(looked, [], model.registry);
  if (!parted.ok) return undefined;
  const found = parted.value.text;
  const columns = textColumns(found, true);
  if (columns.length === 0 || found.rows.length < 2 || looksLikeData(found)) return undefined;
  if (columns.every(({ first }) => first === undefined)) return undefined;
  const fresh = freshFor(book, sheet);
  const table: Table = {
    id: fresh.id('p'),
    kind: 'table',
    name: fresh.name('table_1'),
    title: 'Table',
    length: 0,
    columns: columns.map((column) => columnFor(column, found, fresh, model.registry)),
  };
  const { edit } = insertPartBelow(book, sheetKey, place, table, 'insert a table', fresh);
  const field = table.columns[0]?.id ?? '';
  return { edit, place: { sheet: sheetKey, part: table.id, item: 'head', field } };
}

function columnFor(column: TextColumn, text: TableText, fresh: Fresh, registry: UnitRegistry): Column {
  const { header, position } = column;
  const cells = text.rows
    .filter(({ at }) => at > text.top.at && at !== text.more?.at && at !== text.units?.at)
    .map((row) => row.cells[position]?.trim() ?? '')
    .filter((cell) => cell !== '');
  const numbers = cells.filter((cell) => isLikeNumber(cell, registry));
  const named = withoutUnit(header, registry);
  const any = { kind: 'given', name: nameIn(header, named), type: 'number' } as const;
  const stated = unitOfHeader(column, any, registry);
  const read = stated === '' ? undefined : readUnit(stated, registry);
  const isMostly = cells.length > 0 && numbers.length >= MOSTLY * cells.length;
  const isNumeric = !MARKS.test(header) && (isMostly || (read?.ok === true && numbers.length > 0));
  const label = isNumeric ? named : header;
  return {
    id: fresh.id('k'),
    kind: 'given',
    name: fresh.name(nameFrom(label)),
    label,
    chunks: [],
    ...(isNumeric
      ? { type: 'number', unit: read?.ok ? stated : (unitBeside(numbers, registry) ?? '-') }
      : { type: 'text', optional: true }),
  };
}

/** A number as people write it, with or without its unit behind it. */
const NUMBER = /^[-−+(]?\s*\d[\d.,'’\u00a0 ]*\)?\s*(?<unit>\D.*)?$/u;

function isLikeNumber(cell: string, registry: UnitRegistry): boolean {
  const found = NUMBER.exec(cell);
  const unit = found?.groups?.unit;
  return found !== null && (unit === undefined || readUnit(unit, registry).ok);
}

/** The unit behind the first of some numbers that has one. */
function unitBeside(numbers: readonly string[], registry: UnitRegistry): string | undefined {
  for (const cell of numbers) {
    const unit = NUMBER.exec(cell)?.groups?.unit;
    if (unit !== undefined && readUnit(unit, registry).ok) return unit;
  }
  return undefined;
}

/** What in a heading is a name and no unit, `''` where that is not sure: the letter of V_s is no second. */
function nameIn(header: string, named: string): string {
  return named !== header || /_\p{L}$/u.test(header) ? named : '';
}

/** A heading without the unit in brackets, or behind a comma or a space, that ends it. */
function withoutUnit(header: string, registry: UnitRegistry): string {
  const [, name = '', bracketed, loose] =
    /^(.*?)\s*(?:[([{]([^()[\]{}]*)[)\]}]|[,\s]\s*(\S+))$/u.exec(header) ?? [];
  if (name === '') return header;
  if (bracketed !== undefined) return name;
  return loose !== undefined && loose.length > 1 && readUnit(loose, registry).ok ? name : header;
}

/** A name that formulas can write, made of the words of a heading. */
function nameFrom(label: string): string {
  const words = label.normalize('NFC').match(/[\p{L}\p{Nd}]+/gu) ?? [];
  const joined = words.join('_');
  const name = joined.length > 3 ? joined.toLowerCase() : joined;
  const isFree = NAME_PATTERN.test(name) && !findFunction(name) && !/^(?:true|false)$/i.test(name);
  return isFree ? name : 'column_1';
}
