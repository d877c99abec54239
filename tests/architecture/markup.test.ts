import type { ESTree } from 'vite';
import { expect, test } from 'vitest';
import { nodesOf, parseSource } from './parse-source.ts';
import { projectFiles, readProjectFile } from './project-files.ts';

/** Ways to have a text read as markup. */
const readers =
  /^(innerHTML|outerHTML|insertAdjacentHTML|setHTML|setHTMLUnsafe|parseFromString|createContextualFragment|srcdoc|unsafeHTML|unsafeSVG|unsafeMathML|unsafeStatic|writeln)$/;

/** Templates whose values their library puts in as text. */
const safeTags = new Set(['html', 'svg', 'css']);

const tag = /<[/!]?[a-z]/i;

/** What in a source reads markup, or puts it together from text: a name, or the text of a tag. */
function findings(file: string, source: string): readonly string[] {
  const search = (part: unknown): readonly string[] => {
    const isSafe = (node: ESTree.Node): node is ESTree.TaggedTemplateExpression =>
      node.type === 'TaggedTemplateExpression' &&
      safeTags.has(node.tag.type === 'Identifier' ? node.tag.name : '');
    return [...nodesOf(part, (node) => !isSafe(node))].flatMap((node) => {
      if (isSafe(node)) return node.quasi.expressions.flatMap(search);
      if (node.type === 'Identifier') return readers.test(node.name) ? [node.name] : [];
      if (node.type === 'Literal')
        return typeof node.value === 'string' && tag.test(node.value) ? [node.value] : [];
      if (node.type !== 'TemplateLiteral') return [];
      const [first, ...others] = node.quasis.map(({ value }) => value.cooked ?? value.raw);
      if (first === undefined) return [];
      const begun = others.length === 0 ? tag : /<[/!]?([a-z]|$)/i;
      // In the midst of a template a sign "less than" compares, as in the formulas of the recheck.
      return [
        ...(begun.test(first) ? [first] : []),
        ...others.filter((text) => /<([/!]?[a-z]|[/!]$)/i.test(text)),
      ];
    });
  };
  return search(parseSource(file, source).program);
}

test('markup is made in one place, and read in one place', () => {
  // The reference pages are Markdown, written from the program's own tables and read in no page of the app.
  const sources = projectFiles('src', /\.ts$/).filter((file) => !file.startsWith('src/cli/pages/'));
  const strange = sources.flatMap((file) =>
    findings(file, readProjectFile(file)).map((found) => `${file}: ${found}`),
  );
  const made = /^src\/markup\/markup\.ts: (>?<\/?|<!DOCTYPE html>\n)$/;
  expect([...new Set(strange)].filter((one) => !made.test(one))).toEqual([
    'src/app/style/markup.ts: innerHTML',
  ]);
});

test('the search sees markup in every kind of text, and readers by name', () => {
  const seen = (...source: readonly string[]) => findings('x.ts', source.join(''));
  expect(seen("const a = '<b>' + x;")).toEqual(['<b>']);
  expect(seen('const a = `<$', '{name}>`;')).toEqual(['<']);
  expect(seen('const a = `$', '{x}</i>`;')).toEqual(['</i>']);
  expect(seen('element.innerHTML = x;')).toEqual(['innerHTML']);
  expect(seen('const a = html`<p title="$', '{x}">$', '{`<b>$', '{y}`}</p>`;')).toEqual(['<b>']);
  expect(seen("const a = x < 'b' && '≤ <> =<';")).toEqual([]);
});
