import { existsSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { nearest } from '../diagnostics/index.ts';
import {
  type Book,
  type Cases,
  type Equivalent,
  openBook,
  openCases,
  openEquivalents,
} from '../document/index.ts';
import { readText } from './read-text.ts';
import { Refused, valueOrRefuse } from './refused.ts';
import { shorten } from './shorten.ts';

const templatesFolder = new URL('../../templates/', import.meta.url);

/** The ids of the shipped templates: the folders that hold cases beside their book. */
export function templateIds(): readonly string[] {
  return readdirSync(templatesFolder, { withFileTypes: true })
    .map((found) => found.name)
    .filter((name) => existsSync(new URL(`${name}/cases.json`, templatesFolder)))
    .sort();
}

/** The book of a file, or of a shipped template by its id. */
export function readBook(nameOrPath: string): Book {
  if (templateIds().includes(nameOrPath)) return templateBook(nameOrPath);
  if (!existsSync(nameOrPath)) {
    const near = nearest(nameOrPath, templateIds(), 1).map((id) => `; did you mean the template ${id}?`);
    throw new Refused(`there is no file and no template “${shorten(nameOrPath)}”${near.join('')}`);
  }
  return valueOrRefuse(openBook(readText(nameOrPath)), nameOrPath).book;
}

/** The book of a shipped template. */
export function templateBook(id: string): Book {
  const path = fileURLToPath(new URL(`${id}/book.quaybook.json`, templatesFolder));
  return valueOrRefuse(openBook(readText(path)), `template ${id}`).book;
}

/** The cases of a shipped template. */
export function templateCases(id: string): Cases {
  const path = fileURLToPath(new URL(`${id}/cases.json`, templatesFolder));
  return valueOrRefuse(openCases(readText(path)), `cases of ${id}`);
}

/** The changed formulas of a shipped template that no input can tell from the right ones; none where it has no such file. */
export function templateEquivalents(id: string): readonly Equivalent[] {
  const path = fileURLToPath(new URL(`${id}/equivalent.json`, templatesFolder));
  if (!existsSync(path)) return [];
  return valueOrRefuse(openEquivalents(readText(path)), `equivalents of ${id}`).equivalents;
}

/** The ids named, each a shipped template; all of them if none is named. */
export function chosenTemplates(names: readonly string[]): readonly string[] {
  const known = templateIds();
  for (const name of names) {
    if (known.includes(name)) continue;
    const near = nearest(name, known, 1).map((id) => `; did you mean ${id}?`);
    throw new Refused(`there is no template “${name}”${near.join('')}`);
  }
  return names.length > 0 ? names : known;
}
