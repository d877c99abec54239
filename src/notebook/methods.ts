import { nearest, type Problem, problem } from '../diagnostics/index.ts';
import { type Calc, type CalcColumn, foldedOption, type Method, optionWords } from '../document/index.ts';
import type { Typed } from '../language/index.ts';
import type { InputColumnItem, InputItem, Item, MethodItem, Methods } from './model.ts';
import { type NamedPart, type Names, resolveName } from './names.ts';

/** How the methods of a line are computed, found before any formula is checked. */
export interface MethodPlan {
  readonly by: string;
  readonly byId?: string;
  readonly methods: readonly Method[];
  /** The formula that is computed; empty where no method can be in force. */
  readonly formula: string;
  readonly chosen?: number;
  readonly starts?: readonly number[];
  /** The line it waits on to know which method is in force. */
  readonly waitsOn?: string;
  /** Why no method can be in force. */
  readonly refused?: Problem;
  readonly remarks: readonly Problem[];
  /** The words that a person reads of an option. */
  readonly inWords: (option: string) => string;
}

const NOWHERE = { from: 0, to: 0 };

type Inputs = ReadonlyMap<string, InputItem | InputColumnItem>;

/**
 * How the methods of a line are computed. A choice has one value for the book, so the method it chooses is the line's
 * formula and the others add nothing to what is computed. Any other text chooses as values are computed: then all
 * methods are put together in one formula with a condition before each.
 */
export function planMethods(
  part: Exclude<NamedPart, { kind: 'table' }>,
  { by = '', methods = [] }: Calc | CalcColumn,
  names: Names,
  inputs: Inputs,
  optionsOf: (id: string) => readonly string[],
): MethodPlan {
  const table = part.kind === 'column' ? `${part.sheet}.${part.table.name}` : undefined;
  const source = resolveName(by, names, part.sheet, table);
  const inWords = wordsOfOptions(source);
  const base = { by, methods, formula: '', remarks: [], inWords };
  if (!source || source.kind === 'table')
    return {
      ...base,
      refused: problem('methods-by-unknown', NOWHERE, { by, near: nearby(by, part, names) }),
    };
  const found = { ...base, byId: source.id };
  if (source.kind === 'column' && (by.includes('.') || `${source.sheet}.${source.table.name}` !== table))
    return { ...found, refused: problem('methods-by-column', NOWHERE, { by }) };
  const [only] = methods;
  if (source.kind === 'column' || source.row.kind !== 'choice') {
    const options = source.kind === 'column' ? optionsOf(source.id) : [];
    const { unknown, left } = meet(methods, options, by, inWords);
    const misspelt = unknown[0] && methods.at(-1)?.for === undefined ? unknown[0] : undefined;
    const remarks = [...unknown.map(unused), ...left];
    // One for all options is the formula of the line, whatever the text.
    if (methods.length === 1 && only && only.for === undefined)
      return { ...found, formula: only.formula, chosen: 0 };
    if (misspelt) return { ...found, remarks: left, refused: unknownOption(misspelt) };
    return { ...found, ...branchOf(by, methods), remarks };
  }
  const input = inputs.get(source.id);
  if (input?.kind !== 'input' || input.entry?.kind !== 'text') return { ...found, waitsOn: source.id };
  const { text } = input.entry;
  const { unknown, left } = meet(methods, optionsOf(source.id), by, inWords, text);
  const chosen = indexFor(methods, text);
  const method = methods[chosen];
  const remarks = [...unknown.map(unused), ...left];
  if (!method)
    return {
      ...found,
      remarks,
      refused: problem('method-option-missing', NOWHERE, { option: inWords(text), by }),
    };
  if (unknown[0] && method.for === undefined)
    return { ...found, remarks: left, refused: unknownOption(unknown[0]) };
  return { ...found, remarks, formula: method.formula, chosen };
}

/** The position of the method for an option, else of the one for all others; -1 if there is neither. */
export function indexFor(methods: readonly Method[], option: string): number {
  const folded = foldedOption(option);
  const own = methods.findIndex((method) => method.for?.some((one) => foldedOption(one) === folded));
  return own >= 0 ? own : methods.findIndex((method) => method.for === undefined);
}

/** What a method is for, to follow "the method": `for “API” and “USACE”`. */
export function methodWords(method: Pick<Method, 'for'>): string {
  const options = method.for ?? [];
  if (options.length === 0) return 'for all others';
  const shown = options.slice(0, 3).map((option) => `“${option}”`);
  const more = options.length - shown.length;
  const last = more > 0 ? `${more} more` : shown.pop();
  return `for ${[shown.join(', '), last].filter((words) => words !== '').join(' and ')}`;
}

/** More runs of rows than these nobody reads; the rest is counted. */
const MOST_RUNS = 8;

/** Rows (from 0) as a person counts them, in runs: "rows 1–4, 7"; of many runs the first, "and 940 more". */
export function rowsInWords(rows: readonly number[]): string {
  const runs: { from: number; to: number }[] = [];
  let told = 0;
  for (const row of rows) {
    const last = runs.at(-1);
    if (last && last.to === row - 1) last.to = row;
    else if (runs.length === MOST_RUNS) break;
    else runs.push({ from: row, to: row });
    told += 1;
  }
  const words = runs.map(({ from, to }) => (from === to ? `${from + 1}` : `${from + 1}–${to + 1}`));
  const more = told < rows.length ? ` and ${rows.length - told} more` : '';
  return `${rows.length === 1 ? 'row' : 'rows'} ${words.join(', ')}${more}`;
}

/** The tree of methods put together, with the text that chooses told of it. */
export function withChooser(typed: Typed): Typed {
  if (typed.kind !== 'branch') return typed;
  const chosenBy = chooserIn(typed.arms[0]?.when);
  return chosenBy ? { ...typed, chosenBy } : typed;
}

/** Which method a place in the one formula of all methods is in, and where its formula begins there. */
function methodAt(
  { list, starts }: Pick<Methods, 'list' | 'starts'>,
  from: number,
): { readonly item: MethodItem; readonly start: number } | undefined {
  const at = (starts ?? []).findLastIndex((start) => start <= from);
  const [item, start] = [list[at], starts?.[at]];
  return item && start !== undefined && from <= start + item.checked.text.length
    ? { item, start }
    : undefined;
}

/** A problem found while computing, placed in the formula of the method it is in. */
export function placedInMethod(found: Problem, item: Item): Problem {
  if (!('methods' in item) || !item.methods?.starts) return found;
  const place = found.to > found.from ? methodAt(item.methods, found.from) : undefined;
  if (!place) return { ...found, from: 0, to: 0, fixes: [] };
  return { ...found, from: found.from - place.start, to: found.to - place.start, fixes: [] };
}

function chooserIn(condition: Typed | undefined): Typed | undefined {
  if (condition?.kind === 'compare') return condition.left;
  return condition?.kind === 'call' ? chooserIn(condition.args[0]) : undefined;
}

/** All methods in one formula, each in brackets behind its condition, and where each begins. */
function branchOf(by: string, methods: readonly Method[]): { formula: string; starts: readonly number[] } {
  const starts: number[] = [];
  let formula = 'IFS(';
  for (const method of methods) {
    const tests = (method.for ?? []).map((option) => `${by} = "${option.replaceAll('"', '""')}"`);
    const condition =
      method.for === undefined ? 'TRUE' : tests.length === 1 ? tests[0] : `OR(${tests.join('; ')})`;
    formula += `${starts.length === 0 ? '' : '; '}${condition}; (`;
    starts.push(formula.length);
    // A formula may begin with a sign of equality, which has no place within another.
    formula += `${method.formula.replace(/^\s*=/, (sign) => ' '.repeat(sign.length))})`;
  }
  return { formula: `${formula})`, starts };
}

interface UnknownOption {
  readonly option: string;
  readonly by: string;
  readonly near: string[];
}

/** What methods and options do not have of one another; `chosen` is an option that is told elsewhere. */
function meet(
  methods: readonly Method[],
  options: readonly string[],
  by: string,
  inWords: (option: string) => string,
  chosen?: string,
): { readonly unknown: readonly UnknownOption[]; readonly left: readonly Problem[] } {
  if (options.length === 0) return { unknown: [], left: [] };
  const known = new Set(options.map(foldedOption));
  const named = new Map(methods.flatMap((method) => method.for ?? []).map((one) => [one, foldedOption(one)]));
  const unknown = [...named]
    .filter(([, folded]) => !known.has(folded))
    .map(([option]) => ({ option, by, near: nearest(option, options).map(inWords) }));
  const told = new Set(named.values());
  if (chosen !== undefined) told.add(foldedOption(chosen));
  const open = methods.some((method) => method.for === undefined)
    ? []
    : [...new Set(options)].filter((option) => !told.has(foldedOption(option)));
  const left =
    open.length > 0 ? [problem('method-options-left', NOWHERE, { by, options: open.map(inWords) })] : [];
  return { unknown, left };
}

/** The words that a person reads of the options of what chooses. */
function wordsOfOptions(source: NamedPart | undefined): (option: string) => string {
  const row = source?.kind === 'row' && source.row.kind === 'choice' ? source.row : undefined;
  return (option) => optionWords(row?.options, option);
}

function unused(facts: UnknownOption): Problem {
  return problem('method-option-unused', NOWHERE, { ...facts });
}

function unknownOption(facts: UnknownOption): Problem {
  return problem('method-option-unknown', NOWHERE, { ...facts });
}

function nearby(by: string, part: NamedPart, names: Names): string[] {
  const own = [...names.keys()].flatMap((id) =>
    id.startsWith(`${part.sheet}.`) ? [id.slice(part.sheet.length + 1)] : [],
  );
  return nearest(by, new Set(own));
}
