import { type Problem, problem } from '../../diagnostics/index.ts';
import { type Book, optionWords } from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';

/** The ids of a text: quoted as they stand, or among other words; what else is quoted is a formula as it is written. */
const PARTS = /“([^“”]*)”|[^“”]+|[“”]/gu;

/**
 * A sentence as a person reads it on a page: lines of other sheets by their symbol and the title of their sheet, in place of
 * the key that formulas have for it; those of the sheet itself by their symbol alone. Formulas that are quoted stay as they
 * are written.
 */
export function inPersonsWords(text: string, { book, model }: Notebook, sheet: string): string {
  if (!book.sheets.some(({ key }) => text.includes(`${key}.`))) return text;
  const isThere = (id: string): boolean => model.items.has(id) || model.tables.has(id);
  const worded = (id: string, quoted: boolean): string | undefined => {
    const found = isThere(id) ? partsOfId(id, book) : undefined;
    if (!found) return undefined;
    const name = quoted ? `“${found.name}”` : found.name;
    return found.key === sheet ? name : `${name} on “${found.title}”`;
  };
  return text.replace(PARTS, (part: string, quoted: string | undefined) => {
    if (quoted !== undefined) return worded(quoted, true) ?? part;
    return part.replace(IDS, (id) => worded(id, false) ?? id);
  });
}

const IDS = /(?<![\p{L}\p{N}_'.])\p{L}[\p{L}\p{N}_']*(?:\.\p{L}[\p{L}\p{N}_']*){1,2}/gu;

/** A line, column or table as a person reads it on a sheet: its symbol, and on which other sheet; its id where that is gone. */
export function idInWords(id: string, { book }: Notebook, sheet: string): string {
  const found = partsOfId(id, book);
  if (!found) return id;
  return found.key === sheet ? found.name : `${found.name} on “${found.title}”`;
}

/** The sheet that an id names and its title, and the name on that sheet. */
function partsOfId(
  id: string,
  { sheets }: Book,
): { readonly key: string; readonly title: string; readonly name: string } | undefined {
  const found = sheets.find(({ key }) => id.startsWith(`${key}.`));
  return (
    found && { key: found.key, title: found.title.trim() || found.key, name: id.slice(found.key.length + 1) }
  );
}

/** A problem as a person reads it on a page; see {@link inPersonsWords}. The options of a choice are in their words. */
export function problemInWords(found: Problem, notebook: Notebook, sheet: string): Problem {
  const { message, hints, ...rest } = withOptions(found, notebook);
  return {
    ...rest,
    message: inPersonsWords(message, notebook, sheet),
    hints: hints.map((hint) => inPersonsWords(hint, notebook, sheet)),
  };
}

/** Why an entry is none of a choice, with the options as its list on the page has them. */
function withOptions(found: Problem, { model }: Notebook): Problem {
  const item = found.cell === undefined ? undefined : model.items.get(found.cell);
  if (found.code !== 'choice-unknown' || item?.kind !== 'input' || item.row.kind !== 'choice') return found;
  const { options } = item.row;
  const worded = (list: unknown): string[] =>
    (list as readonly string[]).map((option) => optionWords(options, option));
  const { written, options: all, near } = found.data;
  const facts = {
    written: typeof written === 'string' ? written : '',
    options: worded(all),
    near: worded(near),
  };
  const fixes = found.fixes.map((fix) => ({ ...fix, label: optionWords(options, fix.insert) }));
  const { message, hints } = problem('choice-unknown', found, facts);
  return { ...found, message, hints, fixes };
}

/** The problems of what was refused, each in a sentence with what would mend it. */
export function refusalWords(
  problems: readonly Problem[],
  notebook: Notebook,
  sheet: string,
): readonly string[] {
  return problems
    .map((one) => problemInWords(one, notebook, sheet))
    .map(({ message, hints }) => [message, ...hints].join('; '));
}
