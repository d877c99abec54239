import { fail, type Outcome, type Problem, problem, succeed } from '../../../diagnostics/index.ts';
import { type Book, type Edit, findSheet, joinEdits, setSheetField } from '../../../document/index.ts';
import { namesOf, type Respell, resolveName, usesInPart } from '../../../notebook/index.ts';
import { normaliseLookAlikes } from '../../../units/index.ts';
import { nameRefusal } from '../lines/rename.ts';

/**
 * The edit that gives a sheet another key, in every formula, chart, sketch and list of options of the book that says
 * it. A misspelt or taken key is refused.
 */
export function renameSheetEdit(book: Book, key: string, newKey: string): Outcome<Edit> {
  const wanted = spelledKey(newKey);
  const label = `rename sheet ${key} to ${wanted}`;
  if (!findSheet(book, key))
    return fail(problem('edit-place-unfit', { from: 0, to: 0 }, { path: key, expected: 'a sheet' }));
  if (wanted === key) return succeed({ label, patches: [] });
  const refused = sheetKeyRefusal(book, wanted);
  if (refused) return fail(refused);
  const respell = sheetRespelling(book, key, wanted);
  const uses = book.sheets.flatMap((sheet) =>
    sheet.parts.flatMap((part) => usesInPart(sheet.key, part, respell)),
  );
  return succeed(joinEdits(label, [...uses, setSheetField(key, 'key', wanted)]));
}

/** A key as a person typed it, in the characters that books spell it with. */
export function spelledKey(typed: string): string {
  return normaliseLookAlikes(typed).normalize('NFC').trim();
}

/** Why a new sheet, or one renamed, cannot have a key: its spelling, or another sheet or a table has it. */
export function sheetKeyRefusal(book: Book, key: string): Problem | undefined {
  const refused = nameRefusal(key);
  if (refused) return refused;
  const isTable = book.sheets.some(({ parts }) =>
    parts.some((part) => part.kind === 'table' && part.name === key),
  );
  const by = findSheet(book, key) ? 'another sheet' : isTable ? 'a table' : undefined;
  return by === undefined
    ? undefined
    : problem('rename-taken', { from: 0, to: key.length }, { name: key, by });
}

/** Spells names of the sheet `key` with another key; those that stand for nothing as well, to be mended later. */
export function sheetRespelling(book: Book, key: string, newKey: string): Respell {
  const names = namesOf(book);
  return (written, sheet, table) => {
    if (!written.startsWith(`${key}.`)) return undefined;
    const part = resolveName(written, names, sheet, table);
    // A table called like the sheet's key would be found first; books have none.
    return part && part.id !== written ? undefined : `${newKey}${written.slice(key.length)}`;
  };
}
