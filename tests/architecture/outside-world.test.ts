import ts from 'typescript';
import { expect, test } from 'vitest';
import { projectFiles, readProjectFile } from './project-files.ts';

/** Ways to clock, chance, network, process, page and locale: below rank 7 they come in through one Host only. */
const outsideWorld =
  /\b(Date\.now|new Date\b|performance\.now|Math\.random|process\.|window\.|globalThis\b|navigator\.|localStorage\b|fetch\(|setTimeout\(|Intl\.|toLocale\w*\(|localeCompare\(|eval\(|new Function\b)/g;

const consoleUse = /\bconsole\.\w+/g;

/** A source text without its comments and with its texts emptied, so that prose about a word is no use of it. */
function codeOnly(source: string): string {
  const scanner = ts.createScanner(ts.ScriptTarget.ES2022, true, ts.LanguageVariant.Standard, source);
  const parts: string[] = [];
  for (let token = scanner.scan(); token !== ts.SyntaxKind.EndOfFileToken; token = scanner.scan()) {
    const isText =
      token === ts.SyntaxKind.StringLiteral || token === ts.SyntaxKind.NoSubstitutionTemplateLiteral;
    const isWord = /\w$/.test(parts.at(-1) ?? '') && /^\w/.test(scanner.getTokenText());
    parts.push(isWord ? ' ' : '', isText ? '""' : scanner.getTokenText());
  }
  return parts.join('');
}

function uses(files: readonly string[], pattern: RegExp): readonly string[] {
  return files.flatMap((file) =>
    (codeOnly(readProjectFile(file)).match(pattern) ?? []).map((word) => `${file} uses ${word}`),
  );
}

const source = projectFiles('src', /\.ts$/);

test('below rank 7 nothing touches the outside world', () => {
  const core = source.filter((file) => !/^src\/(workers|app|cli)\//.test(file));
  expect(core.length).toBeGreaterThan(0);
  expect(uses(core, outsideWorld)).toEqual([]);
});

test('only the command line writes to the console', () => {
  expect(
    uses(
      source.filter((file) => !file.startsWith('src/cli/')),
      consoleUse,
    ),
  ).toEqual([]);
});

test('the search sees uses in code, and none in comments or texts', () => {
  const words = (text: string) => codeOnly(text).match(outsideWorld) ?? [];
  expect(words('const t = Date . now() + new   Date().getTime()')).toEqual(['Date.now', 'new Date']);
  expect(words('return fetch(x)')).toEqual(['fetch(']);
  expect(words("// process.exit\n/* window.open */ const a = 'Math.random';")).toEqual([]);
});
