import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

/** The folders in a folder that hold files; one that a move left empty is none of the project's. */
const folders = (path: string): readonly string[] =>
  readdirSync(path, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && readdirSync(`${path}/${entry.name}`).length > 0)
    .map(({ name }) => name);

/** The tree printed in the page on architecture, as paths of folders. */
function printedTree(): readonly string[] {
  const page = readFileSync('docs/architecture.md', 'utf8');
  const tree = page.slice(page.indexOf('\nsrc\n'), page.indexOf('### From a key'));
  let top = '';
  return [...tree.matchAll(/^(│ {2}|)(?:├─|└─) (\S+)( +\S.*)?$/gm)].map(
    ([, inner = '', name = '', words = '']) => {
      expect(words.trim(), name).not.toBe('');
      if (inner === '') top = name;
      return inner === '' ? name : `${top}/${name}`;
    },
  );
}

test('the page on architecture prints every folder of the first two levels, and no other', () => {
  const there = folders('src').flatMap((top) => [
    top,
    ...folders(`src/${top}`).map((name) => `${top}/${name}`),
  ]);
  expect([...printedTree()].sort()).toEqual([...there].sort());
});
