import type { CatalogueEntry, Facts } from './catalogue/entry.ts';
import { catalogue, type FactsOf, type ProblemCode } from './catalogue.ts';

/** A stretch of written text: UTF-16 offsets, `from` inclusive, `to` exclusive. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** A one-key remedy: put `insert` in place of the text from `from` to `to`. `label` is what the person reads. */
export interface Fix {
  readonly label: string;
  readonly from: number;
  readonly to: number;
  readonly insert: string;
}

/** `error`: there is no value. `warning`: there is a value, and something to know about it. */
export type Severity = 'error' | 'warning';

/**
 * What is wrong, where, and what would mend it, as plain data.
 * `cell` is "sheet.name" once somebody knows it; `hints` holds at most one; `data` are the facts the words were
 * made from, for programs.
 */
export interface Problem {
  readonly code: ProblemCode;
  readonly severity: Severity;
  readonly cell?: string;
  readonly from: number;
  readonly to: number;
  readonly message: string;
  readonly hints: readonly string[];
  readonly fixes: readonly Fix[];
  readonly data: Facts;
}

/** A value, or the problems that stand in its way (at least one). */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Makes a problem: the caller passes facts, the catalogue supplies the words and the severity. */
export function problem<C extends ProblemCode>(
  code: C,
  span: Span,
  facts: FactsOf<C>,
  fixes: readonly Fix[] = [],
): Problem {
  const item = catalogue[code] as unknown as CatalogueEntry<FactsOf<C>>;
  const { message, hint } = item.words(facts);
  return {
    code,
    severity: item.severity ?? 'error',
    from: span.from,
    to: span.to,
    message,
    hints: hint === undefined ? [] : [hint],
    fixes,
    data: facts,
  };
}

/** The successful outcome. */
export function succeed<T>(value: T): Outcome<T> {
  return { ok: true, value };
}

/** The failed outcome with one or more problems. */
export function fail(...problems: readonly [Problem, ...Problem[]]): Outcome<never> {
  return { ok: false, problems };
}

/** The same problem, said of the cell "sheet.name". */
export function inCell(p: Problem, cell: string): Problem {
  return { ...p, cell };
}

/** The same problem with span and fixes moved `by` characters to the right: a part's problem, told of the whole. */
export function shiftProblem(p: Problem, by: number): Problem {
  if (by === 0) return p;
  const fixes = p.fixes.map((fix) => ({ ...fix, from: fix.from + by, to: fix.to + by }));
  return { ...p, from: p.from + by, to: p.to + by, fixes };
}
