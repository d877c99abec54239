import { expect, test } from 'vitest';
import { nodesOf, parseSource } from './parse-source.ts';
import { projectFiles, readProjectFile } from './project-files.ts';

/** Ways to clock, chance, network, process, page and locale: below rank 7 they come in through one Host only. */
const outsideWorld =
  /\b(Date\.now|new Date\b|performance\.now|Math\.random|process\.|window\.|globalThis\b|navigator\.|localStorage\b|fetch\(|setTimeout\(|Intl\.|toLocale\w*\(|localeCompare\(|eval\(|new Function\b)/g;

const consoleUse = /\bconsole\.\w+/g;

/** A source text without its comments and with its texts emptied, so that prose about a word is no use of it. */
function codeOnly(source: string): string {
  const { program, comments } = parseSource('source.ts', source);
  const texts = [...nodesOf(program)].filter(
    (node) =>
      (node.type === 'Literal' && typeof node.value === 'string') ||
      (node.type === 'TemplateLiteral' && node.expressions.length === 0),
  );
  let code = '';
  let at = 0;
  const emptied = [
    ...comments.map(({ start, end }) => ({ start, end, by: ' ' })),
    ...texts.map(({ start, end }) => ({ start, end, by: '""' })),
  ].sort((a, b) => a.start - b.start);
  for (const { start, end, by } of emptied) {
    code += source.slice(at, start) + by;
    at = end;
  }
  code += source.slice(at);
  return code.replace(/\s+/g, ' ').replace(/(?<!\w) | (?!\w)/g, '');
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
  expect(words('function ask() { return fetch(x); }')).toEqual(['fetch(']);
  expect(words("// process.exit\n/* window.open */ const a = 'Math.random';")).toEqual([]);
});
