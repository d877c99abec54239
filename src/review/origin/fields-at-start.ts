import {
  type Column,
  type Row,
  rowIdsOf,
  rowWithId,
  type StatedCell,
  type Statement,
  startOfColumn,
  startOfRow,
  type Table,
} from '../../document/index.ts';
import type { NamedPart } from '../../notebook/index.ts';

/** Something that a line, column or table says, under the words a person knows it by. */
export interface StartField {
  readonly says: 'formula' | 'name' | 'words';
  readonly text: string;
  /** Whether another one makes it compute otherwise. */
  readonly computes: boolean;
}

/** All that a line, column or table says beside what is entered in it, in the order it is told. */
export type StartFields = ReadonlyMap<string, StartField>;

/** What a line of each kind is. */
const KINDS = {
  given: 'an entry',
  choice: 'a choice',
  calc: 'a formula',
  check: 'a check',
  series: 'a series',
} as const;

/** `rows`: the table whose rows the stated cells of a column are told by, where it is not its own. */
export function fieldsAtStart(part: NamedPart, rows?: Table): StartFields {
  if (part.kind === 'table') return new Map([['name', words(part.table.name)]]);
  if (part.kind === 'row') return fieldsOf(startOfRow(part.row));
  return fieldsOf(startOfColumn(part.column), rows ?? part.table);
}

function fieldsOf(line: Row | Column, rows?: Table): StartFields {
  const fields = new Map<string, StartField>();
  const say = (field: string, value: StartField | undefined): void => {
    if (value && value.text !== '') fields.set(field, value);
  };
  say('name', words(line.name));
  say('description', words(line.label ?? ''));
  say('what it is', computing(KINDS[line.kind]));
  if ('type' in line) say('kind of entry', computing(line.type === 'number' ? '' : (line.type ?? '')));
  if ('formula' in line) say('formula', formula(line.formula ?? ''));
  if ('by' in line) say('chosen by', { says: 'name', text: line.by ?? '', computes: true });
  for (const method of ('methods' in line && line.methods) || [])
    say(`formula for ${method.for?.join(', ') ?? 'all others'}`, formula(method.formula));
  if ('applies' in line) say('applies where', formula(line.applies ?? ''));
  if ('unit' in line) say('unit', computing(line.unit ?? ''));
  if ('range' in line) say('permitted values', computing(rangeWords(line.range)));
  if ('options' in line) say('options', words((line.options ?? []).map(optionWords).join('; ')));
  if ('from' in line) say('options from', { says: 'name', text: line.from ?? '', computes: false });
  if ('optional' in line) say('may be blank', words(line.optional ? 'yes' : ''));
  if ('default' in line) say('blank counts as', computing(`${line.default ?? ''}`));
  if ('stated' in line)
    for (const [side, text] of statedFields(line.stated, rows)) say(`stated ${side}`.trim(), words(text));
  return fields;
}

const words = (text: string): StartField => ({ says: 'words', text: text.trim(), computes: false });
const computing = (text: string): StartField => ({ says: 'words', text: text.trim(), computes: true });
const formula = (text: string): StartField => ({ says: 'formula', text: text.trim(), computes: true });

function rangeWords(range: { readonly min?: string; readonly max?: string } | undefined): string {
  if (!range) return '';
  return `${range.min ?? 'any'} to ${range.max ?? 'any'}`;
}

function optionWords(option: string | { readonly value: string; readonly label?: string }): string {
  if (typeof option === 'string') return option;
  return option.label === undefined ? option.value : `${option.value} (${option.label})`;
}

type Stated = Exclude<Extract<Row | Column, { readonly stated?: unknown }>['stated'], undefined>;

function statedFields(
  stated: Stated | undefined,
  rows: Table | undefined,
): readonly (readonly [string, string])[] {
  if (!stated) return [];
  if ('entry' in stated) return [['value', said(stated)]];
  if ('demand' in stated || 'capacity' in stated)
    return (['demand', 'capacity'] as const).flatMap((side) => {
      const one = stated[side];
      return one ? [[side, said(one)] as const] : [];
    });
  if (!Array.isArray(stated)) return [];
  const cells: readonly StatedCell[] = stated;
  const placed = cells.map((cell) => ({ cell, at: rows && rowOf(cell, rows) }));
  const gone = placed.flatMap(({ cell, at }) => (at === undefined ? [said(cell)] : []));
  return [
    ...placed
      .flatMap(({ cell, at }) => (at === undefined ? [] : [{ cell, at }]))
      .toSorted((a, b) => a.at - b.at)
      .map(({ cell, at }) => [`${IN_ROW}${at + 1}`, said(cell)] as const),
    ...(gone.length > 0 ? [['value, rows that are gone', gone.join(', ')] as const] : []),
  ];
}

/** The row of a stated cell in a table, from 0; undefined where it is gone. */
function rowOf({ row }: StatedCell, rows: Table): number | undefined {
  return rows.length === undefined ? row - 1 : rowWithId(rowIdsOf(rows), row);
}

const IN_ROW = 'value, row ';

const said = ({ entry, reason }: Statement): string => (reason === '' ? entry : `${entry} (${reason})`);
