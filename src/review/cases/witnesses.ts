import type { Case, Expectation } from '../../document/index.ts';
import {
  columnNamed,
  type Item,
  lineNamed,
  type Model,
  methodInForce,
  type Notebook,
  referencesOfItem,
} from '../../notebook/index.ts';
import type { Computation } from './computations.ts';

/** A case as it was entered, with what it expects of which result. */
export interface EnteredCase {
  readonly notebook: Notebook;
  /** The expectations, each with the id of the result it is of. */
  readonly expected: readonly { readonly id: string; readonly of: Expectation }[];
  /** Which lines and columns name one, by its id. */
  readonly dependents: ReadonlyMap<string, readonly string[]>;
}

/** A case that can tell a change of one formula, with all that it expects of what rests on that formula. */
export interface Witness {
  readonly entered: EnteredCase;
  readonly expected: readonly Expectation[];
}

/** What there is to know of a case before any formula is changed. */
export function enteredCase(notebook: Notebook, { expect }: Case): EnteredCase {
  const { model } = notebook;
  return {
    notebook,
    expected: expect.map((of) => ({ id: idOf(model, of), of })),
    dependents: dependentsIn(model),
  };
}

/** The cases that can tell a change of a formula: it is in force there, and something expected rests on it. */
export function* witnessesOf(cases: Iterable<EnteredCase>, computation: Computation): Generator<Witness> {
  for (const entered of cases) {
    if (!isInForce(entered.notebook, computation)) continue;
    const reached = reachedFrom(computation.id, entered);
    const expected = entered.expected.filter(({ id }) => reached.has(id)).map(({ of }) => of);
    if (expected.length > 0) yield { entered, expected };
  }
}

/** Whether a case expects something of the very line or column. */
export function expectsOf(model: Model, { expect }: Case, { id }: Computation): boolean {
  return expect.some((of) => idOf(model, of) === id);
}

function idOf(model: Model, { name, row }: Expectation): string {
  const found = row === undefined ? lineNamed(model, name) : columnNamed(model, name);
  return found.ok ? found.value.id : name;
}

function dependentsIn({ items }: Model): ReadonlyMap<string, readonly string[]> {
  const dependents = new Map<string, string[]>();
  for (const item of items.values()) {
    if (item.kind !== 'formula' && item.kind !== 'formula column') continue;
    for (const id of referencesOfItem(item)) {
      const known = dependents.get(id);
      if (known) known.push(item.id);
      else dependents.set(id, [item.id]);
    }
  }
  return dependents;
}

/** A line or column, and all that rests on it; what stands on a stated line does not rest on that line's formula. */
function reachedFrom(id: string, { notebook, dependents }: EnteredCase): ReadonlySet<string> {
  const reached = new Set([id]);
  for (const one of reached) {
    if (isStated(notebook.model.items.get(one))) continue;
    for (const dependent of dependents.get(one) ?? []) reached.add(dependent);
  }
  return reached;
}

function isStated(item: Item | undefined): boolean {
  return item?.kind === 'formula' && item.row.kind === 'calc' && item.row.stated !== undefined;
}

/** Whether the formula is used in a case: that of a method that is not in force cannot be told there. */
function isInForce(notebook: Notebook, { id, method }: Computation): boolean {
  const item = notebook.model.items.get(id);
  if (method === undefined || item?.kind !== 'formula') return true;
  return methodInForce(notebook, id)?.method.id === method;
}
