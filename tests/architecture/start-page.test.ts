import { posix } from 'node:path';
import { expect, test } from 'vitest';
import { parseSource } from './parse-source.ts';
import { readProjectFile } from './project-files.ts';

/** The files of the project that a file has the browser load along with it: neither types nor what is loaded later. */
function loadedWith(file: string): readonly string[] {
  return parseSource(file, readProjectFile(file)).program.body.flatMap((statement) => {
    const loads =
      (statement.type === 'ImportDeclaration' && statement.importKind !== 'type') ||
      ((statement.type === 'ExportNamedDeclaration' || statement.type === 'ExportAllDeclaration') &&
        statement.exportKind !== 'type');
    const from = loads ? statement.source?.value : undefined;
    return from !== undefined && /^\..*\.ts$/.test(from) ? [posix.join(posix.dirname(file), from)] : [];
  });
}

test('the start page loads nothing that only an open book needs', () => {
  const loaded = new Set(['src/app/main.ts']);
  for (const file of loaded) for (const next of loadedWith(file)) loaded.add(next);
  expect(loaded.size).toBeGreaterThan(5);
  expect([...loaded].filter((file) => !file.startsWith('src/app/'))).toEqual([]);
});
