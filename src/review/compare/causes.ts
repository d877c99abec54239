import { type Item, type Notebook, restsDirectlyOn } from '../../notebook/index.ts';
import type { Cause, Causes } from './difference.ts';

/** The most causes that one change lists. */
const LISTED = 20;

/** A line, column or table of either book or both, as causes are looked for. */
export interface Causable {
  readonly before?: string;
  readonly after?: string;
  /** Whether it comes to something else. */
  readonly changed: boolean;
  /** What a person changed of it. */
  readonly own?: Cause;
  /** Whether that says itself what it is computed from now: names of one book only are then no causes. */
  readonly recomputed: boolean;
}

/** Finds what a person changed that changes rest on, at any distance. */
export interface CauseFinder {
  readonly of: (id: string) => Causes;
}

const NONE: Marked = { marks: [], more: false };

/** Places of causes in their list, ascending. */
interface Marked {
  readonly marks: readonly number[];
  readonly more: boolean;
}

/**
 * The causes of changes: from each thing up through all that it is computed from and that comes to something else, as far as
 * what a person changed. `things` are in the order of the book; what no line explains is put down to `otherwise`.
 */
export function causeFinder(
  things: readonly Causable[],
  notebooks: { readonly before: Notebook; readonly after: Notebook },
  otherwise: readonly Cause[],
): CauseFinder {
  const byBefore = new Map(
    things.flatMap((node) => (node.before === undefined ? [] : [[node.before, node]])),
  );
  const byAfter = new Map(things.flatMap((node) => (node.after === undefined ? [] : [[node.after, node]])));
  const place = new Map(things.map((node, at) => [node, at]));
  const found = new Map<Causable, Marked>();

  const above = (node: Causable): readonly Causable[] => {
    const old = nodesOf(notebooks.before, node.before, byBefore);
    const next = nodesOf(notebooks.after, node.after, byAfter);
    const isNamed = node.recomputed ? (one: Causable) => old.has(one) && next.has(one) : () => true;
    return [...new Set([...old, ...next])].filter((one) => one !== node && one.changed && isNamed(one));
  };

  /** Goes up without recursion: a chain of lines may be longer than the stack is deep. */
  const find = (start: Causable): Marked => {
    const stack: { readonly node: Causable; readonly above: readonly Causable[]; at: number }[] = [];
    const entered = new Set<Causable>();
    const enter = (node: Causable): void => {
      if (found.has(node) || entered.has(node)) return;
      entered.add(node);
      stack.push({ node, above: above(node), at: 0 });
    };
    enter(start);
    for (let top = stack.at(-1); top; top = stack.at(-1)) {
      const next = top.above[top.at];
      top.at += 1;
      if (next) enter(next);
      else {
        const { node } = top;
        const own = node.own ? [{ marks: [place.get(node) ?? 0], more: false }] : [];
        found.set(node, joined([...own, ...top.above.map((one) => found.get(one) ?? NONE)]));
        stack.pop();
      }
    }
    return found.get(start) ?? NONE;
  };

  return {
    of: (id) => {
      const node = byAfter.get(id);
      const { marks, more } = node ? find(node) : NONE;
      const list = marks.flatMap((mark) => things[mark]?.own ?? []);
      return list.length > 0 ? { list, more } : { list: otherwise, more: false };
    },
  };
}

/** The first places of several lists together. */
function joined(lists: readonly Marked[]): Marked {
  const filled = lists.filter(({ marks }) => marks.length > 0);
  const [first] = filled;
  if (filled.length < 2) return first ?? NONE;
  const marks = [...new Set(filled.flatMap((one) => one.marks))].sort((a, b) => a - b);
  return { marks: marks.slice(0, LISTED), more: marks.length > LISTED || filled.some(({ more }) => more) };
}

/** What a line, column or table is computed from in one of the books; a column from the rows of its table too. */
function nodesOf(
  { model }: Notebook,
  id: string | undefined,
  nodes: ReadonlyMap<string, Causable>,
): ReadonlySet<Causable> {
  const item = id === undefined ? undefined : model.items.get(id);
  if (!item) return new Set();
  const ids = [...restsDirectlyOn(item, model), ...chosenBy(item), ...tableOf(item)];
  return new Set(ids.flatMap((one) => nodes.get(one) ?? []));
}

/** What chooses the method of a line. */
function chosenBy(item: Item): readonly string[] {
  if (item.kind === 'formula' && item.stated) return [];
  const by = 'methods' in item ? item.methods?.byId : undefined;
  return by === undefined ? [] : [by];
}

function tableOf(item: Item): readonly string[] {
  return item.kind === 'input column' || item.kind === 'formula column' ? [item.table] : [];
}
