import { partsOf, type Syntax, type Typed } from '../../language/index.ts';

/** Finds the typed part of a formula that a part of its text was understood as; parentheses have none of their own. */
export function typedBySpan(whole: Typed): (node: Syntax) => Typed | undefined {
  const found = new Map<string, Typed>();
  const visit = (node: Typed): void => {
    const key = `${node.from}:${node.to}`;
    if (!found.has(key)) found.set(key, node);
    for (const part of writtenParts(node)) visit(part);
  };
  visit(whole);
  const typedOf = (node: Syntax): Typed | undefined =>
    node.kind === 'group' ? typedOf(node.inner) : found.get(`${node.from}:${node.to}`);
  return typedOf;
}

/** The parts as the formula writes them; what the checker made of them has no place in its text. */
function writtenParts(node: Typed): readonly Typed[] {
  if (node.kind === 'branch') return node.args;
  return node.kind === 'compare' ? [node.left, node.right] : partsOf(node);
}
