import type { Difference, Place, RowCell, RowValues, Subject } from '../../review/index.ts';
import { causeWords } from './cause-words.ts';
import { fieldWords } from './field-words.ts';
import {
  checkWords,
  fieldStates,
  methodSays,
  resultWords,
  shortened,
  sizeWords,
  valueWords,
  type Words,
} from './value-words.ts';

/** One difference as one line of a list of changes, whatever the texts of the book have in them. */
export function changeWords(difference: Difference): string {
  return inOneLine(wordsOf(difference));
}

/** A text with its line ends as spaces: a text of a book must not look like a line of the list. */
export function inOneLine(text: string): string {
  return text.replace(/\s*[\n\v\f\r\u0085\u2028\u2029]\s*/g, ' ');
}

function wordsOf(difference: Difference): string {
  switch (difference.kind) {
    case 'book': {
      const { field, from, to } = difference;
      return `${fieldWords(field)}: ${arrow(fieldStates(from, to))}`;
    }
    case 'added':
    case 'removed': {
      const { kind, subject, says, cells } = difference;
      const said = says ? `: ${shortened(says)}` : '';
      return `${kind}: ${subjectWords(subject)}${said}${cells ? cellsWords(cells) : ''}`;
    }
    case 'moved':
      return `moved: ${subjectWords(difference.subject)}${moveWords(difference)}`;
    case 'field':
      return fieldChangeWords(difference);
    case 'cell': {
      const { subject, from, to, size } = difference;
      return `${subjectWords(subject)}: ${arrow(fieldStates(from, to))}${sizeWords(size)}`;
    }
    case 'method': {
      const { subject, from, to, causes } = difference;
      const words = `method ${from ?? 'none'} → ${to ?? 'none'}`;
      return `${subjectWords(subject)}: ${words}${causeWords(causes, subject)}`;
    }
    case 'result':
    case 'total': {
      const { kind, subject, from, to, size, causes } = difference;
      const words = resultWords(from, to);
      const what = kind === 'total' ? 'total of ' : '';
      return `${what}${subjectWords(subject)}: ${words.from} → ${words.to}${sizeWords(size)}${causeWords(causes, subject)}`;
    }
    case 'check': {
      const { subject, from, to, causes } = difference;
      return `check ${subjectWords(subject)}: ${checkWords(from, to)}${causeWords(causes, subject)}`;
    }
    case 'values':
      return columnWords(difference);
  }
}

function fieldChangeWords({
  subject,
  field,
  methodWords,
  from,
  to,
  only,
  size,
}: Extract<Difference, { kind: 'field' }>): string {
  if (field === 'method')
    return `${subjectWords(subject)}: method ${methodWords ?? ''} ${to === undefined ? 'removed' : 'added'}: ${methodSays(to ?? from)}`;
  const words = arrow(fieldStates(from, to));
  if (field === 'name' || field === 'key') return `renamed: ${subjectWords(subject)}: ${words}`;
  const of = methodWords === undefined ? '' : ` of the method ${methodWords}`;
  const note = {
    writing: ' (written in another way, says the same)',
    names: ' (written as before, a name in it stands for something else)',
  };
  return `${subjectWords(subject)}: ${fieldWords(field)}${of} ${words}${only ? note[only] : ''}${sizeWords(size)}`;
}

function columnWords({
  subject,
  lengths,
  rows,
  largest,
  causes,
}: Extract<Difference, { kind: 'values' }>): string {
  const counted = rows.length === 0 ? [] : [rows.length === 1 ? rowWords(rows[0]) : `${rows.length} rows`];
  const length = lengths ? [`${lengths.before} → ${lengths.after} rows in all`] : [];
  const most = largest ?? rows[0];
  const shown = most && valueWords(most.from, most.to);
  const values = shown ? `${shown.from} → ${shown.to}${sizeWords(largest?.size)}` : '';
  const where = rows.length > 1 ? `most in ${rowWords(most)}: ${values}` : values;
  const said = [...length, ...counted, ...(where === '' ? [] : [where])].join('; ');
  return `${subjectWords(subject)}: ${said}${causeWords(causes, subject)}`;
}

function rowWords(row: RowValues | undefined): string {
  if (!row) return '';
  return `row ${row.after + 1}${row.rowName === undefined ? '' : ` “${row.rowName}”`}`;
}

function cellsWords(cells: readonly RowCell[]): string {
  if (cells.length === 0) return ' (blank)';
  return `: ${cells.map(({ column, cell }) => `${column} ${cell}`).join(', ')}`;
}

/** What a difference is about, by the name it has now: `energy.v, approach speed`. */
function subjectWords({ kind, before, after }: Subject): string {
  const place = after ?? before;
  if (!place) return kind;
  const { id, label, index, rowName } = place;
  const described = label === '' ? '' : `, ${label}`;
  switch (kind) {
    case 'sheet':
      return `sheet ${id}${described}`;
    case 'part':
      return label;
    case 'line':
      return `${id}${described}`;
    case 'table':
    case 'column':
      return `${kind} ${id}${described}`;
    case 'row':
    case 'cell':
      return `${id}, row ${index + 1}${rowName === undefined ? '' : ` “${rowName}”`}`;
  }
}

/** From where to where: another sheet, another part, another position. */
function moveWords({ subject, within }: Extract<Difference, { kind: 'moved' }>): string {
  const { before, after } = subject;
  if (!before || !after) return '';
  if (within) return ` from position ${position(before)} to ${position(after)}`;
  if (subject.kind !== 'line') return ` from sheet ${before.sheet} to sheet ${after.sheet}`;
  return before.sheet === after.sheet
    ? ' to another block of lines'
    : ` from sheet ${before.sheet} to sheet ${after.sheet}`;
}

const arrow = ({ from, to }: Words): string => `${from} → ${to}`;

const position = ({ index }: Place): number => index + 1;
