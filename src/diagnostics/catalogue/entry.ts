/** Anything JSON can hold. */
export type JsonValue =
  | null
  | boolean
  | number
  | string
  | readonly JsonValue[]
  | { readonly [key: string]: JsonValue };

/** Facts a problem is told from: rendered strings and numbers, by name. */
export type Facts = Readonly<Record<string, JsonValue>>;

/** For codes that need no facts: `entry<NoFacts>(…)`, `problem(code, span, {})`. */
export type NoFacts = Readonly<Record<string, never>>;

/** The sentence of a problem: a fact, lower case first word, no full stop; and at most one concrete hint. */
export interface Words {
  readonly message: string;
  readonly hint?: string;
}

/** One code of the catalogue. `title` and `explain` make its page in the reference (`explain` is whole sentences). */
export interface CatalogueEntry<F extends Facts> {
  readonly title: string;
  readonly explain: string;
  readonly severity?: 'warning';
  readonly words: (facts: F) => Words;
}

/** Declares a code: `'my-code': entry<{ name: string }>({ title, explain, words: ({ name }) => ({ message }) })`. */
export function entry<F extends Facts>(item: CatalogueEntry<F>): CatalogueEntry<F> {
  return item;
}
