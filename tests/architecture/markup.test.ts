import ts from 'typescript';
import { expect, test } from 'vitest';
import { projectFiles, readProjectFile } from './project-files.ts';

/** Ways to have a text read as markup. */
const readers =
  /^(innerHTML|outerHTML|insertAdjacentHTML|setHTML|setHTMLUnsafe|parseFromString|createContextualFragment|srcdoc|unsafeHTML|unsafeSVG|unsafeMathML|unsafeStatic|writeln)$/;

/** Templates whose values their library puts in as text. */
const safeTags = new Set(['html', 'svg', 'css']);

/** What in a source reads markup, or puts it together from text: a name, or the text of a tag. */
function findings(file: string, source: string): readonly string[] {
  const tree = ts.createSourceFile(file, source, ts.ScriptTarget.ES2022, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node) && readers.test(node.text)) found.push(node.text);
    if (ts.isTaggedTemplateExpression(node) && safeTags.has(node.tag.getText())) {
      if (ts.isTemplateExpression(node.template))
        for (const span of node.template.templateSpans) visit(span.expression);
      return;
    }
    if (ts.isStringLiteralLike(node) && /<[/!]?[a-z]/i.test(node.text)) found.push(node.text);
    // In the midst of a template a sign "less than" compares, as in the formulas of the second engine.
    if (ts.isTemplateHead(node) && /<[/!]?([a-z]|$)/i.test(node.text)) found.push(node.text);
    if (ts.isTemplateMiddleOrTemplateTail(node) && /<([/!]?[a-z]|[/!]$)/i.test(node.text))
      found.push(node.text);
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

test('markup is made in one place, and read in one place', () => {
  // The reference pages are Markdown, written from the program's own tables and read in no page of the app.
  const sources = projectFiles('src', /\.ts$/).filter((file) => !file.startsWith('src/cli/pages/'));
  const strange = sources.flatMap((file) =>
    findings(file, readProjectFile(file)).map((found) => `${file}: ${found}`),
  );
  expect([...new Set(strange)].filter((one) => !/^src\/markup\/markup\.ts: >?<\/?$/.test(one))).toEqual([
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
