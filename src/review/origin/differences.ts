import type { Book, Sheet, Start } from '../../document/index.ts';
import { changeParts, parseFormula, printSyntax, type Syntax } from '../../language/index.ts';
import {
  type NamedPart,
  namesAtStart,
  namesInOrigin,
  namesOf,
  resolveName,
  type StartedPair,
  startedPairs,
} from '../../notebook/index.ts';
import { spelledFormula } from '../spelled-formula.ts';
import { fieldsAtStart, type StartField } from './fields-at-start.ts';

/** Something that a line says otherwise than it did; absent where it did not say it, or does not any more. */
export interface OtherField {
  readonly field: string;
  readonly says: StartField['says'];
  readonly computes: boolean;
  readonly was?: string;
  readonly is?: string;
}

/** A line, column or table of a sheet that is not as it came. */
export interface OriginDifference {
  readonly what: 'changed' | 'gone' | 'added';
  /** As it came: its id is the one it had in its template or book. */
  readonly was?: NamedPart;
  readonly is?: NamedPart;
  readonly fields: readonly OtherField[];
}

/** A sheet beside what it was when it came into its book. */
export interface SheetOrigin {
  readonly sheet: Sheet;
  readonly start: Start;
  /** In the order of the sheet, what is gone at the end. */
  readonly differences: readonly OriginDifference[];
}

const originsByBook = new WeakMap<Book, readonly SheetOrigin[]>();

/**
 * What is not as it came, on each sheet that knows how it came: formulas, units, names, words, what is stated; lines that came
 * or went. What is entered is the book's own affair. Another name for a line changes that line and no formula that names it.
 */
export function originsOf(book: Book): readonly SheetOrigin[] {
  const known = originsByBook.get(book);
  if (known) return known;
  const spellers = new Map<string, (pair: Required<StartedPair>) => Spellers>();
  const spellersFor = (pair: Required<StartedPair>): Spellers => {
    const { content } = pair.start;
    const made = spellers.get(content) ?? spellersOf(book, content);
    spellers.set(content, made);
    return made(pair);
  };
  const bySheet = new Map<string, OriginDifference[]>();
  for (const pair of startedPairs(book)) {
    const found = differenceOf(pair, spellersFor);
    if (found) bySheet.set(pair.sheet, [...(bySheet.get(pair.sheet) ?? []), found]);
  }
  const origins = book.sheets.flatMap((sheet): SheetOrigin[] =>
    sheet.start ? [{ sheet, start: sheet.start, differences: bySheet.get(sheet.key) ?? [] }] : [],
  );
  originsByBook.set(book, origins);
  return origins;
}

/** The full id by which a difference is known: in the book, or once in its template where it is gone. */
export function idOfDifference({ was, is }: OriginDifference): string {
  return is?.id ?? was?.id ?? '';
}

function differenceOf(
  pair: StartedPair,
  spellersFor: (pair: Required<StartedPair>) => Spellers,
): OriginDifference | undefined {
  const { was, is } = pair;
  const one = is ?? was;
  if (!one) return undefined;
  if (!was || !is) {
    // Of a table that came or went its columns are told.
    if (one.kind === 'table') return undefined;
    const fields = [...fieldsAtStart(one)].flatMap(([field, { says, text, computes }]): OtherField[] =>
      field === 'name' || field === 'description'
        ? []
        : [{ field, says, computes, ...(is ? { is: text } : { was: text }) }],
    );
    return is ? { what: 'added', is, fields } : { what: 'gone', ...(was && { was }), fields };
  }
  const fields = otherFields(was, is, spellersFor({ ...pair, was, is }));
  return fields.length > 0 ? { what: 'changed', was, is, fields } : undefined;
}

/** How names are spelled on either side so that the same thing is spelled alike. */
interface Spellers {
  readonly was: (name: string) => string;
  readonly is: (name: string) => string;
}

/** Names are spelled as they were in full where the sheet came from; what came from elsewhere by what it is now. */
function spellersOf(book: Book, content: string): (pair: Required<StartedPair>) => Spellers {
  const called = namesInOrigin(book, content);
  const now = namesOf(book);
  return ({ start, was, is }) => {
    const then = namesAtStart(start);
    const before = (name: string): string => resolveName(name, then, start.key, tableOf(was))?.id ?? name;
    return {
      was: before,
      is: (name) => {
        const found = resolveName(name, now, is.sheet, tableOf(is));
        if (!found) return before(name);
        return called.get(found.id) ?? `now ${found.id}`;
      },
    };
  };
}

function tableOf(part: NamedPart): string | undefined {
  return part.kind === 'column' ? `${part.sheet}.${part.table.name}` : undefined;
}

function otherFields(was: NamedPart, is: NamedPart, spell: Spellers): readonly OtherField[] {
  // Rows are told by where they stand now, on both sides.
  const rows = is.kind === 'column' ? is.table : undefined;
  const [before, after] = [fieldsAtStart(was, rows), fieldsAtStart(is, rows)];
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((field): OtherField[] => {
    const [old, next] = [before.get(field), after.get(field)];
    const { says, computes } = next ?? old ?? { says: 'words', computes: false };
    if (old && next && isSaidAlike(old, next, was, is, spell)) return [];
    return [{ field, says, computes, ...(old && { was: old.text }), ...(next && { is: next.text }) }];
  });
}

function isSaidAlike(
  { says, text: old }: StartField,
  { text: next }: StartField,
  was: NamedPart,
  is: NamedPart,
  spell: Spellers,
): boolean {
  if (says === 'words') return old === next;
  if (says === 'name') return spell.was(old) === spell.is(next);
  const before = spelledFormula(lineOf(was), old, (name) => inBraces(spell.was(name)));
  const after = spelledFormula(lineOf(is), next, (name) => inBraces(spell.is(name)));
  return before === after || writtenAlike(printed(old, spell.was), printed(next, spell.is));
}

/** No formula has braces, so that nothing else is spelled so. */
const inBraces = (name: string): string => `{${name}}`;

/** Whether two formulas differ in spaces and spellings alone; what cannot be read is compared as it is written. */
const writtenAlike = (a: string | undefined, b: string | undefined): boolean => a !== undefined && a === b;

function printed(text: string, spell: (name: string) => string): string | undefined {
  const { syntax, problems } = parseFormula(text);
  if (problems.length > 0) return undefined;
  const spelled = (node: Syntax): Syntax =>
    node.kind === 'name' ? { ...node, name: inBraces(spell(node.name)) } : changeParts(node, spelled);
  return printSyntax(spelled(syntax));
}

function lineOf(part: NamedPart): object {
  return part.kind === 'row' ? part.row : part.kind === 'column' ? part.column : part.table;
}
