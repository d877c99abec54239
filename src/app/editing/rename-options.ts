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
} from '../../document/index.ts';
import { type Names, namesOf, resolveName } from '../../notebook/index.ts';

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

/** The options of a list whose value alone is another one in the same place of a list as long, by their old values. */
function renamedOptions(before: readonly Option[], after: readonly Option[]): ReadonlyMap<string, string> {
  const renamed = new Map<string, string>();
  if (before.length !== after.length) return renamed;
  const [old, now] = [before, after].map((list) => new Set(list.map(({ value }) => foldedOption(value))));
  for (const [at, { value }] of before.entries()) {
    const other = after[at]?.value;
    if (other === undefined || other === value) continue;
    const [from, to] = [foldedOption(value), foldedOption(other)];
    // An option that stands elsewhere in the list has changed its place, not its name.
    if (from === to || (!now?.has(from) && !old?.has(to))) renamed.set(from, other);
  }
  return renamed;
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
