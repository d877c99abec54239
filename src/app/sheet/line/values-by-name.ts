import type { Syntax } from '../../../language/index.ts';
import type { FormulaItem, Item, Notebook, Quantity, Result } from '../../../notebook/index.ts';
import { sameDimension, type Unit } from '../../../units/index.ts';
import type { Session } from '../../session/session.ts';
import { type Shown, shownQuantity } from '../../session/shown.ts';
import type { Fact } from './taken-branch.ts';

/** What the names in a line's formula stand for now. */
export interface NamedValues {
  /** The numbers to put in for the names of a formula as it is drawn; undefined keeps the symbol. */
  readonly shown: (drawn: Syntax) => (name: string) => Shown | undefined;
  /** What is known of a name; undefined if it is not a line or has no value. */
  readonly fact: (name: string) => Fact | undefined;
}

/** The values of names as a line of a sheet writes them: of the sheet's own lines, or with the sheet in front. */
export function valuesByName({ notebook, units }: Session, sheet: string, item: Item): NamedValues {
  const results = new Map<string, Result | undefined>();
  const resultOf = (name: string): Result | undefined => {
    if (!results.has(name)) results.set(name, lineResult(notebook, sheet, name));
    return results.get(name);
  };
  const own = item.kind === 'formula' ? unitOfLine(notebook, item) : undefined;
  return {
    shown: (drawn) => {
      const beside = new Set(namesSideBySide(drawn));
      return (name) => {
        const result = resultOf(name);
        if (result?.status !== 'ok') return undefined;
        const { value } = result;
        if (value.kind === 'text') return { number: `“${value.text}”`, unit: '' };
        if (value.kind === 'truth') return { number: value.truth ? 'true' : 'false', unit: '' };
        const unit = own && beside.has(name) && fits(value, own) ? own : value.unit;
        // One digit more than results have, so that who works it by hand comes to the result shown.
        return shownQuantity(value.si, unit, units, notebook.model.registry, { digits: 'working' });
      };
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

/** The unit a line's own numbers are read in: of its result, or of the sides it compares. */
function unitOfLine(notebook: Notebook, { id }: FormulaItem): Unit | undefined {
  const result = notebook.result(id);
  if (result.status !== 'ok') return undefined;
  return result.value.kind === 'number' ? result.value.unit : notebook.verdict(id)?.demand?.unit;
}

/**
 * The names that are compared or added as they stand. Their numbers are put in in the line's own unit, because they are
 * read against each other; a factor keeps the unit it was entered in, which is how the reader knows it again.
 */
function namesSideBySide(node: Syntax): readonly string[] {
  switch (node.kind) {
    case 'name':
      return [node.name];
    case 'group':
      return namesSideBySide(node.inner);
    case 'negate':
      return namesSideBySide(node.operand);
    case 'comparison':
      return [node.left, node.right].flatMap(namesSideBySide);
    case 'binary':
      return node.op === '+' || node.op === '-' ? [node.left, node.right].flatMap(namesSideBySide) : [];
    default:
      return [];
  }
}

function fits({ unit }: Quantity, own: Unit): boolean {
  return (
    unit.point === undefined &&
    own.point === undefined &&
    unit.angle === own.angle &&
    sameDimension(unit.dimension, own.dimension)
  );
}
