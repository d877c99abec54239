import { type CallSyntax, findFunction, type NameSyntax, type Syntax } from '../../language/index.ts';
import type { Notebook, PartPlace, Side, Value } from '../../notebook/index.ts';
import { sameDimension, type Unit } from '../../units/index.ts';
import { formatQuantity, type PrintedQuantity, quantityText } from '../values/format-quantity.ts';
import type { UnitsView } from '../values/units-view.ts';
import { valuesSideBySide } from './side-by-side.ts';
import { typedBySpan } from './typed-by-span.ts';
import { workCall } from './worked-calls.ts';
import type { WorkedNote, Working } from './working.ts';

/** A formula with its numbers put in, as it is worked by hand. */
export interface WorkedFormula {
  /**
   * The formula with the branch that holds in place of a choice between formulas, and the rows that a call works with in
   * place of whole columns.
   */
  readonly syntax: Syntax;
  /** What stands in place of a name; undefined keeps the symbol. */
  readonly shown: (name: NameSyntax) => PrintedQuantity | undefined;
  /** What the numbers alone do not say: the row something was found in, which rows count. */
  readonly notes: readonly WorkedNote[];
}

/** A book, and the units it is shown in. */
export interface Shown {
  readonly notebook: Notebook;
  readonly units: UnitsView;
}

/** One digit more than the longest results have, so that who works it by hand comes to the result shown. */
const STYLE = { digits: 'working' } as const;

/** Puts the numbers of now into a formula: of a line, or of a column in one of its rows. */
export function workFormula({ notebook, units }: Shown, place: PartPlace): WorkedFormula {
  const { registry } = notebook.model;
  const values = new Map<NameSyntax, Value>();
  const said = new Map<NameSyntax, string>();
  const notes = new Set<WorkedNote>();
  const typedOf = typedBySpan(place.checked.typed);
  const standIn = (name = ''): NameSyntax => ({ kind: 'name', name, from: 0, to: 0 });
  const shownValue = (value: Value, unit?: Unit): PrintedQuantity => {
    if (value.kind === 'text') return { number: `“${value.text}”`, unit: '' };
    if (value.kind === 'truth') return { number: `${value.truth}`, unit: '' };
    return formatQuantity(value.si, unit ?? value.unit, units, registry, STYLE);
  };
  const working: Working = {
    notebook,
    typedOf,
    work: (node, at) => workPart(node, at, working),
    put: (value) => {
      const node = standIn();
      values.set(node, value);
      return node;
    },
    say: (words) => {
      const node = standIn();
      said.set(node, words);
      return node;
    },
    note: (note, { element }) => {
      if (!element) notes.add(note);
    },
    write: (value) => quantityText(shownValue(value)),
  };
  const syntax = workSides(place, working);
  const beside = new Set(valuesSideBySide(syntax));
  const own = ownUnit(notebook, place);
  return {
    syntax,
    shown: (name) => {
      const words = said.get(name);
      if (words !== undefined) return { number: words, unit: '' };
      const value = values.get(name);
      return value && shownValue(value, own && beside.has(name) && fits(value, own) ? own : undefined);
    },
    notes: [...notes],
  };
}

/** The unit a formula's own numbers are read in: of its result, or of the sides it compares. */
function ownUnit(notebook: Notebook, { item }: PartPlace): Unit | undefined {
  if (item.kind === 'formula column')
    return item.type.kind === 'number' ? notebook.unitOf(item.id) : undefined;
  const result = notebook.result(item.id);
  if (result.status !== 'ok') return undefined;
  return result.value.kind === 'number' ? result.value.unit : notebook.verdict(item.id)?.demand?.unit;
}

function fits(value: Value, own: Unit): boolean {
  return (
    value.kind === 'number' &&
    value.unit.point === undefined &&
    own.point === undefined &&
    value.unit.angle === own.angle &&
    sameDimension(value.unit.dimension, own.dimension)
  );
}

/** A formula with its numbers put in; a side of a check that is stated is the number stated. */
function workSides(place: PartPlace, working: Working): Syntax {
  const { item, checked } = place;
  const { syntax, typed } = checked;
  if (item.kind !== 'formula' || !item.sides || syntax.kind !== 'comparison' || typed.kind !== 'compare')
    return working.work(syntax, place);
  const verdict = working.notebook.verdict(item.id);
  const side = (part: Syntax, of: Side): Syntax => {
    const value = item.sides?.[of] ? verdict?.[of] : undefined;
    return value ? working.put(value) : working.work(part, place);
  };
  const turned = typed.op === '>=' || typed.op === '>';
  const [left, right] = turned ? (['capacity', 'demand'] as const) : (['demand', 'capacity'] as const);
  return { ...syntax, left: side(syntax.left, left), right: side(syntax.right, right) };
}

function workPart(node: Syntax, place: PartPlace, working: Working): Syntax {
  const work = (part: Syntax): Syntax => workPart(part, place, working);
  /** What a call has become keeps to itself among other terms. */
  const operand = (part: Syntax): Syntax => {
    const worked = work(part);
    return part.kind === 'call' && (worked.kind === 'binary' || worked.kind === 'negate')
      ? { kind: 'group', inner: worked, from: part.from, to: part.to }
      : worked;
  };
  switch (node.kind) {
    case 'group':
      return { ...node, inner: work(node.inner) };
    case 'negate':
    case 'percent':
      return { ...node, operand: operand(node.operand) };
    case 'root':
      return { ...node, operand: work(node.operand) };
    case 'power':
      return { ...node, base: operand(node.base), exponent: operand(node.exponent) };
    case 'binary':
    case 'comparison':
      return { ...node, left: operand(node.left), right: operand(node.right) };
    case 'call':
      return workCall(node, place, working) ?? argumentsWorked(node, work);
    case 'name': {
      const typed = working.typedOf(node);
      const value = typed && working.notebook.parts.valueOf(typed, place);
      return value ? working.put(value) : node;
    }
    case 'number':
    case 'text':
    case 'truth':
    case 'error':
      return node;
  }
}

/** A call as it is written, with the numbers put into its arguments. */
function argumentsWorked(call: CallSyntax, work: (part: Syntax) => Syntax): Syntax {
  // Whether something is blank is asked of a symbol.
  return findFunction(call.name)?.typeset === 'blank' ? call : { ...call, args: call.args.map(work) };
}
