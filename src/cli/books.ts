import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { nearest } from '../diagnostics/index.ts';
import { type Book, type Cases, openBook, openCases } from '../document/index.ts';
import { Refused, valueOrRefuse } from './refused.ts';
import { shortened } from './shortened.ts';

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
    throw new Refused(`there is no file and no template “${shortened(nameOrPath)}”${near.join('')}`);
  }
  return valueOrRefuse(openBook(readText(nameOrPath)), nameOrPath).book;
}

/** The text of a file. */
export function readText(path: string): string {
  const bytes = readBytes(path);
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Refused(`${path} is not UTF-8 text; save it as UTF-8`);
  }
}

function readBytes(path: string): Uint8Array {
  try {
    return readFileSync(path);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
    throw new Refused(`${path} cannot be read (${wordsOf(code)})`);
  }
}

const errorWords: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder',
  EACCES: 'it may not be read',
};

function wordsOf(code: string): string {
  return errorWords[code] ?? `the system says ${code}`;
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
