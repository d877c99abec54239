import { type ESTree, parseSync } from 'vite';

/** A source of TypeScript as a tree, with its comments. Throws what is wrong with it, if anything. */
export function parseSource(file: string, source: string) {
  const { program, comments, errors } = parseSync(file, source, { lang: 'ts' });
  if (errors.length > 0) throw new Error(`${file}: ${errors.map(({ message }) => message).join('; ')}`);
  return { program, comments };
}

/** The nodes of a tree and all nodes below them, each before its own parts; `within` says whether a node's parts count. */
export function* nodesOf(
  node: unknown,
  within: (node: ESTree.Node) => boolean = () => true,
): Generator<ESTree.Node> {
  if (Array.isArray(node)) for (const one of node) yield* nodesOf(one, within);
  else if (isNode(node)) {
    yield node;
    if (within(node)) for (const part of Object.values(node)) yield* nodesOf(part, within);
  }
}

const isNode = (value: unknown): value is ESTree.Node =>
  typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string';
