import {
  type Book,
  type Calc,
  type CalcColumn,
  type CalcPlace,
  type Choice,
  type Edit,
  foldedOption,
  type Option,
  setMethodField,
} from '../../../document/index.ts';
import { type Names, namesOf, resolveName } from '../../../notebook/index.ts';

/**
 * The edits by which the methods of lines, and the choice itself, follow options whose values are written otherwise.
 * `id` is the choice's, `sheet.name`.
 */
export function followOptions(
  book: Book,
  id: string,
  choice: Choice,
  wanted: readonly Option[],
): { readonly entry?: string; readonly edits: readonly Edit[] } {
  const renamed = renamedOptions(choice.options ?? [], wanted);
  if (renamed.size === 0) return { edits: [] };
  const names = namesOf(book);
  const edits = book.sheets.flatMap(({ key: sheet, parts }) =>
    parts.flatMap((part) => {
      if (part.kind === 'rows')
        return part.rows.flatMap((row) =>
          row.kind === 'calc' && chooses(id, row, names, sheet)
            ? inMethods({ sheet, part: part.id, row: row.id }, row, renamed)
            : [],
        );
      if (part.kind !== 'table') return [];
      return part.columns.flatMap((column) =>
        column.kind === 'calc' && chooses(id, column, names, sheet, `${sheet}.${part.name}`)
          ? inMethods({ sheet, table: part.id, column: column.id }, column, renamed)
          : [],
      );
    }),
  );
  const entry = renamed.get(foldedOption(choice.entry));
  return { ...(entry !== undefined && { entry }), edits };
}

/**
 * The one option whose value is another one, its words with it or not, in a list that has the other values as it had
 * them, by its old value. Where more has changed, the list is another list: what was chosen, and what methods are for, is
 * then for the person to say.
 */
function renamedOptions(before: readonly Option[], after: readonly Option[]): ReadonlyMap<string, string> {
  if (before.length !== after.length) return new Map();
  const changed = before.flatMap((old, at) => {
    const now = after[at];
    return now && now.value !== old.value ? [{ old, now }] : [];
  });
  const [only, ...others] = changed;
  if (!only || others.length > 0) return new Map();
  const [from, to] = [foldedOption(only.old.value), foldedOption(only.now.value)];
  const taken = from !== to && before.some(({ value }) => foldedOption(value) === to);
  return taken ? new Map() : new Map([[from, only.now.value]]);
}

function chooses(
  id: string,
  { by }: Calc | CalcColumn,
  names: Names,
  sheet: string,
  table?: string,
): boolean {
  return by !== undefined && resolveName(by, names, sheet, table)?.id === id;
}

function inMethods(at: CalcPlace, { methods = [] }: Calc | CalcColumn, renamed: ReadonlyMap<string, string>) {
  return methods.flatMap((method): readonly Edit[] => {
    const options = method.for?.map((option) => renamed.get(foldedOption(option)) ?? option);
    const same = options?.every((option, index) => option === method.for?.[index]) ?? true;
    return same ? [] : [setMethodField(at, method.id, 'for', options)];
  });
}
