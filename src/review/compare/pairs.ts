/** What two lists have in common, and what only one of them has. */
export interface Pairs<Item> {
  /** In the order of the new list. */
  readonly both: readonly Pair<Item>[];
  readonly removed: readonly Item[];
  readonly added: readonly Item[];
}

/** The same thing in the old book and in the new one. */
export interface Pair<Item> {
  readonly before: Item;
  readonly after: Item;
}

/** Pairs that are found in several ways, one after the other: each way is asked only about what is left. */
export interface Pairing<Item> {
  /** Pairs what has the same key, where no other of its list has it; what has no key is left. `fits` may refuse a pair. */
  readonly byKey: (
    keyBefore: (item: Item) => string | undefined,
    keyAfter: (item: Item) => string | undefined,
    fits?: (before: Item, after: Item) => boolean,
  ) => void;
  /** Pairs those that have the most in common, each the other's only best; `shares` counts what two have in common. */
  readonly byShares: (marks: (item: Item) => readonly string[]) => void;
  readonly done: () => Pairs<Item>;
}

/** Begins to pair two lists. */
export function pairing<Item extends object>(before: readonly Item[], after: readonly Item[]): Pairing<Item> {
  const partner = new Map<Item, Item>();
  const paired = new Set<Item>();
  const pair = (a: Item, b: Item): void => {
    partner.set(b, a);
    paired.add(a).add(b);
  };
  const isLeft = (item: Item): boolean => !paired.has(item);
  return {
    byKey: (keyBefore, keyAfter, fits = () => true) => {
      const left = onlyBearers(after.filter(isLeft), keyAfter);
      for (const [key, item] of onlyBearers(before.filter(isLeft), keyBefore)) {
        const other = left.get(key);
        if (other && fits(item, other)) pair(item, other);
      }
    },
    byShares: (marks) => {
      for (const [a, b] of bestPairs(before.filter(isLeft), after.filter(isLeft), marks)) pair(a, b);
    },
    done: () => ({
      both: after.flatMap((item) => {
        const other = partner.get(item);
        return other ? [{ before: other, after: item }] : [];
      }),
      removed: before.filter(isLeft),
      added: after.filter(isLeft),
    }),
  };
}

/** The items by their keys, without those whose key another one has. */
function onlyBearers<Item>(
  items: readonly Item[],
  keyOf: (item: Item) => string | undefined,
): ReadonlyMap<string, Item> {
  const found = new Map<string, Item>();
  const twice = new Set<string>();
  for (const item of items) {
    const key = keyOf(item);
    if (key === undefined) continue;
    if (found.has(key)) twice.add(key);
    found.set(key, item);
  }
  for (const key of twice) found.delete(key);
  return found;
}

/** The pairs in which each has more in common with the other than with any else, and at least half of what either has. */
function bestPairs<Item>(
  before: readonly Item[],
  after: readonly Item[],
  marks: (item: Item) => readonly string[],
): readonly (readonly [Item, Item])[] {
  const marked = after.map((item) => new Set(marks(item)));
  const counts = before.map((item) => {
    const own = new Set(marks(item));
    return marked.map((other) => {
      const shared = [...own].filter((mark) => other.has(mark)).length;
      return 2 * shared >= Math.max(own.size, other.size) ? shared : 0;
    });
  });
  return before.flatMap((item, a) => {
    const row = counts[a] ?? [];
    const most = Math.max(0, ...row);
    const b = row.indexOf(most);
    const other = after[b];
    if (most === 0 || other === undefined || row.lastIndexOf(most) !== b) return [];
    const rivals = counts.filter((one) => (one[b] ?? 0) >= most).length;
    return rivals === 1 ? [[item, other] as const] : [];
  });
}
