import { fail, type Outcome, type Problem, problem, succeed } from '../../../diagnostics/index.ts';
import {
  type Edit,
  foldedOption,
  insertMethod,
  joinEdits,
  type Method,
  moveMethod,
  type Option,
  optionWords,
  removeMethod,
  setColumnField,
  setEntry,
  setMethodField,
  setMethodsBy,
  setRowField,
  useMethods,
  useOneFormula,
} from '../../../document/index.ts';
import { methodWords, type Notebook } from '../../../notebook/index.ts';
import { placeOfId } from '../../view-model/places.ts';
import { findPlace } from '../find-place.ts';
import { type Chooser, chooserAt, choosersFor } from './choosers.ts';
import { type MethodLine, methodForOthers } from './method-line.ts';

/** An option that what chooses does not have yet; `list` is the id of the choice or column that is to get it. */
export interface FreshOption extends Option {
  readonly list?: string;
}

/** What a method is to be for: named options, one of them perhaps a new one, or all others. */
export interface Serving {
  readonly options: readonly string[];
  readonly others: boolean;
  readonly fresh?: FreshOption;
}

/** An edit that puts a method in, and the id of it. */
export interface NewMethod {
  readonly edit: Edit;
  readonly id: string;
}

const NOWHERE = { from: 0, to: 0 };

/** Has a line of one formula computed by methods: the formula is the method for one option, or for all others. */
export function beginMethods(
  notebook: Notebook,
  target: MethodLine,
  by: string,
  serving: Serving,
): Outcome<Edit> {
  const { line, place } = target;
  const chooser = choosersFor(notebook, target).find((one) => one.by === by);
  if (!chooser) return fail(problem('methods-by-unfit', NOWHERE, { name: line.name, by }));
  const served = serve(notebook, target, chooser, serving);
  if (!served.ok) return served;
  const { reference, note } = line;
  const method: Method = {
    id: freshId([]),
    ...served.value.for,
    formula: line.formula ?? '',
    ...(reference !== undefined && { reference }),
    ...(note !== undefined && { note }),
  };
  const edit = useMethods(place, line, by, [method]);
  return succeed(joinEdits(`compute ${line.name} by methods`, [...served.value.edits, edit]));
}

/** Puts a method without a formula behind the others of a line, in front of the one for all others. */
export function addMethod(notebook: Notebook, target: MethodLine, serving: Serving): Outcome<NewMethod> {
  const { line, place } = target;
  const { methods = [] } = line;
  const served = serve(notebook, target, chooserAt(notebook, target), serving);
  if (!served.ok) return served;
  const method = { id: freshId(methods), ...served.value.for, formula: '' };
  const index = methodForOthers(line) ? methods.length - 1 : methods.length;
  const label = `add a method ${methodWords(method)} to ${line.name}`;
  const edit = joinEdits(label, [...served.value.edits, insertMethod(place, index, method)]);
  return succeed({ edit, id: method.id });
}

/** Says which options a method is for; undefined where it is for them already. */
export function serveOptions(
  notebook: Notebook,
  target: MethodLine,
  id: string,
  serving: Serving,
): Outcome<Edit | undefined> {
  const { line, place } = target;
  const { methods = [] } = line;
  const method = methods.find((one) => one.id === id);
  const served = serve(notebook, target, chooserAt(notebook, target), serving, method);
  if (!served.ok) return served;
  const options = served.value.for.for;
  if (`${options?.join('\n')}` === `${method?.for?.join('\n')}` && served.value.edits.length === 0)
    return succeed(undefined);
  const label = `change what a method of ${line.name} is for`;
  const last = options === undefined && methods.at(-1)?.id !== id;
  return succeed(
    joinEdits(label, [
      ...served.value.edits,
      setMethodField(place, id, 'for', options),
      ...(last ? [moveMethod(place, id, methods.length - 1)] : []),
    ]),
  );
}

/** Takes a method out of its line; the only one stays. */
export function dropMethod({ line, place }: MethodLine, id: string): Outcome<Edit> {
  const { methods = [], name } = line;
  const method = methods.find((one) => one.id === id);
  if (methods.length < 2) return fail(problem('method-alone', NOWHERE, { name }));
  const label = method ? `remove the method of ${name} ${methodWords(method)}` : 'remove a method';
  return succeed({ ...removeMethod(place, id), label });
}

/** Moves a method up or down among those of its line; undefined at the ends. The one for all others stays the last. */
export function shiftMethod(
  { line, place }: MethodLine,
  id: string,
  step: 1 | -1,
): Outcome<Edit | undefined> {
  const { methods = [], name } = line;
  const at = methods.findIndex((one) => one.id === id);
  const to = at + step;
  if (at < 0 || to < 0 || to >= methods.length) return succeed(undefined);
  if (methods[at]?.for === undefined || methods[to]?.for === undefined)
    return fail(problem('method-others-last', NOWHERE, { name }));
  return succeed({ ...moveMethod(place, id, to), label: `move a method of ${name}` });
}

/** Sets what chooses between the methods of a line; undefined where it does already. */
export function chooseBy(notebook: Notebook, target: MethodLine, by: string): Outcome<Edit | undefined> {
  const { line, place } = target;
  if (line.by === by) return succeed(undefined);
  if (!choosersFor(notebook, target).some((one) => one.by === by))
    return fail(problem('methods-by-unfit', NOWHERE, { name: line.name, by }));
  return succeed({ ...setMethodsBy(place, by), label: `choose the method of ${line.name} by ${by}` });
}

/** Has a line computed by the formula of one of its methods alone. */
export function keepOneMethod({ line, place }: MethodLine, id: string): Edit {
  return { ...useOneFormula(place, line, id), label: `keep one method of ${line.name} as its formula` };
}

/** Chooses an option in the choice that decides, for all that goes by it. */
export function chooseOption(
  notebook: Notebook,
  { id, by, options }: Chooser,
  option: string,
): Edit | undefined {
  const place = placeOfId(notebook, id);
  return (
    place && {
      ...setEntry({ ...place, row: place.item }, option),
      label: `choose ${optionWords(options, option)} for ${by}`,
    }
  );
}

interface Served {
  readonly for: Pick<Method, 'for'>;
  /** What gives the choice its new option. */
  readonly edits: readonly Edit[];
}

/** What `own`, or a new method, is to be for, or why it cannot be. */
function serve(
  notebook: Notebook,
  { line }: MethodLine,
  chooser: Chooser | undefined,
  { options, others, fresh }: Serving,
  own?: Method,
): Outcome<Served> {
  const { methods = [], name } = line;
  const rest = methods.filter((one) => one !== own);
  const refuse = (found: Problem): Outcome<Served> => fail(found);
  if (others) {
    if (rest.some((one) => one.for === undefined))
      return refuse(problem('method-others-taken', NOWHERE, { name }));
    return succeed({ for: {}, edits: [] });
  }
  const added = fresh && withOption(notebook, chooser, fresh);
  if (added && !added.ok) return added;
  const wanted = distinct([...options, ...(fresh ? [fresh.value.trim()] : [])]);
  if (wanted.length === 0) return refuse(problem('method-for-nothing', NOWHERE, { name }));
  const taken = new Set(rest.flatMap((one) => one.for ?? []).map(foldedOption));
  const twice = wanted.find((option) => taken.has(foldedOption(option)));
  if (twice !== undefined)
    return refuse(
      problem('method-option-taken', NOWHERE, { name, option: optionWords(chooser?.options, twice) }),
    );
  return succeed({ for: { for: wanted }, edits: added?.value ?? [] });
}

/** The edits that give a choice or a column one option more; none where any text will do. */
function withOption(
  notebook: Notebook,
  chooser: Chooser | undefined,
  { value, label, list }: FreshOption,
): Outcome<readonly Edit[]> {
  const by = chooser?.by ?? '';
  const option = value.trim();
  if (option === '') return fail(problem('option-blank', NOWHERE, { by }));
  if (chooser?.from !== undefined)
    return fail(problem('option-of-column', NOWHERE, { by, from: chooser.from }));
  const to = chooser?.lists.find(({ id }) => id === list);
  const place = to && placeOfId(notebook, to.id);
  if (!place) return chooser?.isOpen ? succeed([]) : fail(problem('option-of-none', NOWHERE, { by, option }));
  const same = to.options.find((one) => foldedOption(one.value) === foldedOption(option));
  if (same) return fail(problem('option-there', NOWHERE, { by: to.id, option: same.label || same.value }));
  const words = label?.trim() ?? '';
  if (findPlace(notebook.book, place)?.kind === 'row')
    return succeed([
      setRowField({ ...place, row: place.item }, 'options', [
        ...to.options,
        { value: option, ...(words !== '' && { label: words }) },
      ]),
    ]);
  const options = [...to.options.map((one) => one.value), option];
  return succeed([
    setColumnField({ sheet: place.sheet, table: place.part, column: place.field }, 'options', options),
  ]);
}

/** Options as they are compared, each once. */
function distinct(options: readonly string[]): readonly string[] {
  return [...new Map(options.map((option) => [foldedOption(option), option])).values()];
}

function freshId(methods: readonly Method[]): string {
  const taken = new Set(methods.map(({ id }) => id));
  let n = methods.length + 1;
  while (taken.has(`m${n}`)) n += 1;
  return `m${n}`;
}
