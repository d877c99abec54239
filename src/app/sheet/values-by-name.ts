import type { Notebook, Result } from '../../notebook/index.ts';
import type { Session } from '../session/session.ts';
import { type Shown, shownQuantity } from '../session/shown.ts';
import type { Fact } from './taken-branch.ts';

/** What the names in a sheet's formulas stand for now. */
export interface NamedValues {
  /** The number put in for a name; undefined keeps the symbol. */
  readonly shown: (name: string) => Shown | undefined;
  /** What is known of a name; undefined if it is not a line or has no value. */
  readonly fact: (name: string) => Fact | undefined;
}

/** The values of names as written on a sheet: of its own lines, or with the sheet in front. */
export function valuesByName(session: Session, sheet: string): NamedValues {
  const { notebook, units } = session;
  const results = new Map<string, Result | undefined>();
  const resultOf = (name: string): Result | undefined => {
    if (!results.has(name)) results.set(name, lineResult(notebook, sheet, name));
    return results.get(name);
  };
  return {
    shown: (name) => {
      const result = resultOf(name);
      if (result?.status !== 'ok') return undefined;
      const { value } = result;
      if (value.kind === 'number') return shownQuantity(value.si, value.unit, units, notebook.model.registry);
      if (value.kind === 'text') return { number: `“${value.text}”`, unit: '' };
      return { number: value.truth ? 'true' : 'false', unit: '' };
    },
    fact: (name) => {
      const result = resultOf(name);
      if (result?.status === 'missing') return { kind: 'blank' };
      if (result?.status !== 'ok') return undefined;
      const { value } = result;
      if (value.kind === 'number') return { kind: 'number', value: value.si };
      if (value.kind === 'text') return { kind: 'text', value: value.text };
      return { kind: 'truth', value: value.truth };
    },
  };
}

function lineResult(notebook: Notebook, sheet: string, name: string): Result | undefined {
  const { items } = notebook.model;
  const item = items.get(`${sheet}.${name}`) ?? items.get(name);
  return item?.kind === 'input' || item?.kind === 'formula' ? notebook.result(item.id) : undefined;
}
