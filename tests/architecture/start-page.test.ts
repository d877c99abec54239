import { posix } from 'node:path';
import ts from 'typescript';
import { expect, test } from 'vitest';
import { readProjectFile } from './project-files.ts';

/** The files of the project that a file has the browser load along with it: neither types nor what is loaded later. */
function loadedWith(file: string): readonly string[] {
  const tree = ts.createSourceFile(file, readProjectFile(file), ts.ScriptTarget.ES2022);
  return tree.statements.flatMap((statement) => {
    const loads =
      (ts.isImportDeclaration(statement) &&
        statement.importClause?.phaseModifier !== ts.SyntaxKind.TypeKeyword) ||
      (ts.isExportDeclaration(statement) && !statement.isTypeOnly);
    const from = loads ? statement.moduleSpecifier : undefined;
    return from && ts.isStringLiteral(from) && /^\..*\.ts$/.test(from.text)
      ? [posix.join(posix.dirname(file), from.text)]
      : [];
  });
}

test('the start page loads nothing that only an open book needs', () => {
  const loaded = new Set(['src/app/main.ts']);
  for (const file of loaded) for (const next of loadedWith(file)) loaded.add(next);
  expect(loaded.size).toBeGreaterThan(5);
  expect([...loaded].filter((file) => !file.startsWith('src/app/'))).toEqual([]);
});
