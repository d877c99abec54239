import { foldedOption } from '../document/index.ts';
import { type BranchNode, type CallNode, partsOf, type Typed } from '../language/index.ts';
import type { Item } from './model.ts';

/** The texts that a line or column which chooses methods can be, and the ids of what it chooses for. */
export interface KnownTexts {
  readonly texts: readonly string[];
  readonly steers: readonly string[];
  /** Whether its formula comes to no others, as far as can be told. */
  readonly complete: boolean;
}

type Items = ReadonlyMap<string, Item>;

/** The texts that a choice or a text column may be, by its id. */
export type TextsOf = (id: string) => readonly string[];

/** The texts a tree can come to, by what they are compared by; `open` where it can also come to others. */
interface Possible {
  readonly texts: ReadonlyMap<string, string>;
  readonly open: boolean;
}

/** More than so many texts put together from others are not listed. */
const JOINED_LIMIT = 1000;

/**
 * The texts that a calculated text can be where it chooses methods, by itself or through other texts made of it: those
 * its formula comes to and those the methods are for. Undefined where it chooses none, and where nobody can tell.
 */
export function knownTexts(id: string, items: Items, textsOf: TextsOf): KnownTexts | undefined {
  const chosen = chosenBy(id, items);
  const steers = [...new Set([...chosen.keys(), ...chosenThrough(id, items, new Set([id]))])];
  if (steers.length === 0) return undefined;
  const possible = possibleOf(id, items, textsOf, new Set());
  if (chosen.size === 0 && possible.open) return undefined;
  const named = [...chosen.values(), ...namedThrough(id, items, new Set([id]))]
    .flat()
    .map((text) => [foldedOption(text), text] as const);
  const texts = [...new Map([...possible.texts, ...named]).values()];
  return { texts, steers, complete: !possible.open };
}

/** What has methods that this text chooses, with the texts they are for. One method for all others is no choice. */
function chosenBy(id: string, items: Items): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, readonly string[]>();
  for (const item of items.values()) {
    if (!('methods' in item) || item.methods?.byId !== id) continue;
    const texts = item.methods.list.flatMap(({ method }) => method.for ?? []);
    if (texts.length > 0) found.set(item.id, texts);
  }
  return found;
}

/** What is chosen by texts that are made of this one. */
function chosenThrough(id: string, items: Items, seen: Set<string>): readonly string[] {
  return [...items.values()].flatMap((item) => {
    if (!('checked' in item) || item.type.kind !== 'text' || seen.has(item.id)) return [];
    if (!treesOf(item).some((tree) => textSources(tree).includes(id))) return [];
    seen.add(item.id);
    return [...chosenBy(item.id, items).keys(), ...chosenThrough(item.id, items, seen)];
  });
}

/** The texts that methods are for which are chosen by this one where other lines and columns pass it on as it stands. */
function namedThrough(id: string, items: Items, seen: Set<string>): readonly (readonly string[])[] {
  return [...items.values()].flatMap((item) => {
    if (!('checked' in item) || item.type.kind !== 'text' || seen.has(item.id)) return [];
    if (!treesOf(item).some((tree) => passedOn(tree).includes(id))) return [];
    seen.add(item.id);
    return [...chosenBy(item.id, items).values(), ...namedThrough(item.id, items, seen)];
  });
}

/** The ids of lines and columns whose text a tree comes to as it stands. */
function passedOn(tree: Typed): readonly string[] {
  if (tree.kind === 'cell' || tree.kind === 'column') return [tree.id];
  if (tree.kind === 'branch') return valuesOf(tree).flatMap(passedOn);
  const picked = tree.kind === 'call' ? pickedOf(tree) : undefined;
  return picked ? passedOn(picked) : [];
}

function treesOf(item: Extract<Item, { checked: unknown }>): readonly Typed[] {
  return item.methods ? item.methods.list.map(({ checked }) => checked.typed) : [item.checked.typed];
}

/** The ids of lines and columns whose text a tree comes to, or puts into one. */
function textSources(tree: Typed): readonly string[] {
  if (tree.kind === 'cell' || tree.kind === 'column') return [tree.id];
  if (tree.kind === 'branch') return valuesOf(tree).flatMap(textSources);
  const picked = tree.kind === 'call' ? pickedOf(tree) : undefined;
  return picked ? textSources(picked) : partsOf(tree).filter(isText).flatMap(textSources);
}

const isText = (tree: Typed): boolean => tree.type.kind === 'text';

const NONE: Possible = { texts: new Map(), open: false };
const OPEN: Possible = { texts: new Map(), open: true };

function possibleOf(id: string, items: Items, textsOf: TextsOf, within: Set<string>): Possible {
  const item = items.get(id);
  if (!item) return OPEN;
  if (item.kind === 'input' && item.row.kind === 'given')
    return listed(item.entry?.kind === 'text' ? [item.entry.text] : []);
  if (!('checked' in item)) return listed(textsOf(id));
  // What leads back to itself brings no further texts.
  if (within.has(id)) return NONE;
  within.add(id);
  const found = union(treesOf(item).map((tree) => possibleIn(tree, items, textsOf, within)));
  within.delete(id);
  return found;
}

function possibleIn(tree: Typed, items: Items, textsOf: TextsOf, within: Set<string>): Possible {
  const possible = (part: Typed): Possible => possibleIn(part, items, textsOf, within);
  switch (tree.kind) {
    case 'text':
      return listed([tree.text]);
    case 'cell':
    case 'column':
      return possibleOf(tree.id, items, textsOf, within);
    case 'branch':
      return union(valuesOf(tree).map(possible));
    case 'above':
      return union([possible(tree.column), possible(tree.first)]);
    case 'join':
      return joined(possible(tree.left), possible(tree.right));
    case 'call': {
      const picked = pickedOf(tree);
      return picked ? possible(picked) : OPEN;
    }
    default:
      return OPEN;
  }
}

function valuesOf({ arms, otherwise }: BranchNode): readonly Typed[] {
  return [...arms.map(({ value }) => value), ...(otherwise ? [otherwise] : [])];
}

/** The column of a call of which it gives one element as it stands. */
function pickedOf({ fn, args }: CallNode): Typed | undefined {
  return args[fn.parameters.findIndex(({ picked }) => picked === true)];
}

function listed(texts: readonly string[]): Possible {
  return { texts: new Map(texts.map((text) => [foldedOption(text), text])), open: false };
}

function union(all: readonly Possible[]): Possible {
  return {
    texts: new Map(all.flatMap(({ texts }) => [...texts])),
    open: all.some(({ open }) => open),
  };
}

function joined(left: Possible, right: Possible): Possible {
  if (left.open || right.open || left.texts.size * right.texts.size > JOINED_LIMIT) return OPEN;
  return listed([...left.texts.values()].flatMap((a) => [...right.texts.values()].map((b) => a + b)));
}
