import { book } from './catalogue/book.ts';
import type { CatalogueEntry } from './catalogue/entry.ts';
import { lines } from './catalogue/lines.ts';
import { methods } from './catalogue/methods.ts';
import { names } from './catalogue/names.ts';
import { paste } from './catalogue/paste.ts';
import { quantity } from './catalogue/quantity.ts';
import { review } from './catalogue/review.ts';
import { sheets } from './catalogue/sheets.ts';
import { syntax } from './catalogue/syntax.ts';
import { tables } from './catalogue/tables.ts';
import { types } from './catalogue/types.ts';
import { values } from './catalogue/values.ts';

/** The areas of the catalogue, one file each, by name. */
export const catalogueAreas = {
  quantity,
  syntax,
  names,
  types,
  values,
  lines,
  methods,
  tables,
  paste,
  sheets,
  review,
  book,
};

/** Every code a problem can have, with its title, its explanation and its words. */
export const catalogue = {
  ...quantity,
  ...syntax,
  ...names,
  ...types,
  ...values,
  ...lines,
  ...methods,
  ...tables,
  ...paste,
  ...sheets,
  ...review,
  ...book,
};

/** The code of a problem: kebab-case and stable. */
export type ProblemCode = keyof typeof catalogue;

/** The facts the code `C` is told from. */
export type FactsOf<C extends ProblemCode> =
  (typeof catalogue)[C] extends CatalogueEntry<infer F> ? F : never;
