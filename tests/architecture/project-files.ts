import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const notOurs = new Set(['node_modules', '.git', '.cache', 'dist', 'screens']);
const generated = /^src\/language\/grammar\/parser(\.terms)?\.js$/;

/** The project's own files in one of its folders ('' for all), as paths from the project folder, in order. */
export function projectFiles(folder: string, ending: RegExp = /./): readonly string[] {
  const found = readdirSync(root + folder, { withFileTypes: true }).flatMap((entry): readonly string[] => {
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
    if (entry.isDirectory()) return notOurs.has(entry.name) ? [] : projectFiles(path, ending);
    return ending.test(path) && !generated.test(path) ? [path] : [];
  });
  return found.toSorted();
}

/** The text of a project file, by its path from the project folder. */
export function readProjectFile(path: string): string {
  return readFileSync(root + path, 'utf8');
}
