import { expect, test } from 'vitest';
import { projectFiles, readProjectFile } from './project-files.ts';

const code = ['src', 'tests', 'bench', 'scripts'].flatMap((folder) => projectFiles(folder, /\.(ts|js)$/));
const texts = projectFiles('', /(\.(ts|js|json|md|html|css|grammar|txt)|\.ci\/run)$/);

function filesWith(files: readonly string[], pattern: RegExp): readonly string[] {
  return files.filter((file) => pattern.test(readProjectFile(file)));
}

test('no file is longer than 600 lines, unless it says on line 1 that it is a table of data', () => {
  const long = code.filter((file) => {
    const lines = readProjectFile(file).split('\n');
    return lines.length > 600 && !/^(\/\/|\/\*).*\b(table|data)\b/i.test(lines[0] ?? '');
  });
  expect(long).toEqual([]);
});

test('file names are kebab-case', () => {
  const name = /^\.?[a-z0-9]+(-[a-z0-9]+)*(\.[a-z]+)*$/;
  const paths = [...code, ...projectFiles('templates'), ...projectFiles('docs')];
  expect(paths.filter((path) => !path.split('/').every((part) => name.test(part)))).toEqual([]);
});

test('no test is skipped, focused or unwritten', () => {
  const unrun = /\b(it|test|describe)\.(only|skip|todo|skipIf|runIf|fails)\b|\bx(it|test|describe)\(/;
  expect(filesWith(projectFiles('tests', /\.ts$/), unrun)).toEqual([]);
});

test('the lock file names no download address', () => {
  expect(readProjectFile('package-lock.json')).not.toMatch(/"resolved"\s*:\s*"https?:/);
});

test("no file names a folder of one person's machine", () => {
  const home = /(^|[\s"'\x60(])(\/(home|root|tmp|Users)\/|[A-Z]:\\Users\\)\w/m;
  expect(filesWith(texts, home)).toEqual([]);
});

test('the licence is complete and the same everywhere', () => {
  const licence = readProjectFile('LICENSE');
  expect(licence).toContain('GNU GENERAL PUBLIC LICENSE');
  expect(licence).toContain('How to Apply These Terms to Your New Programs');
  expect(JSON.parse(readProjectFile('package.json'))).toMatchObject({ license: 'GPL-3.0-only' });
});
