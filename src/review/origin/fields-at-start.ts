import { type Column, type Row, type Statement, startOfColumn, startOfRow } from '../../document/index.ts';
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

/** How many of the stated cells of a column are told. */
const TOLD = 5;

export function fieldsAtStart(part: NamedPart): StartFields {
  if (part.kind === 'table') return new Map([['name', words(part.table.name)]]);
  if (part.kind === 'row') return fieldsOf(startOfRow(part.row));
  return fieldsOf(startOfColumn(part.column));
}

function fieldsOf(line: Row | Column): StartFields {
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
    for (const [side, text] of statedFields(line.stated)) say(`stated ${side}`.trim(), words(text));
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

function statedFields(stated: Stated | undefined): readonly (readonly [string, string])[] {
  if (!stated) return [];
  if ('entry' in stated) return [['value', said(stated)]];
  if ('demand' in stated || 'capacity' in stated)
    return (['demand', 'capacity'] as const).flatMap((side) => {
      const one = stated[side];
      return one ? [[side, said(one)] as const] : [];
    });
  if (!Array.isArray(stated)) return [];
  const cells: readonly Statement[] = stated;
  const more = cells.length > TOLD ? ` and ${cells.length - TOLD} more` : '';
  return [['cells', `${cells.slice(0, TOLD).map(said).join(', ')}${more}`]];
}

const said = ({ entry, reason }: Statement): string => (reason === '' ? entry : `${entry} (${reason})`);
