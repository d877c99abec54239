import { inCell, type Problem } from '../diagnostics/index.ts';
import type { Book, Calc, Check, Choice, GivenColumn } from '../document/index.ts';
import {
  type CheckedFormula,
  NO_AXES,
  onAxes,
  type Type,
  typeOfUnit,
  unknownType,
} from '../language/index.ts';
import { extendUnits, standardUnits, type UnitRegistry } from '../units/index.ts';
import { appliesFailures } from './applies.ts';
import { type CheckedMethods, checkMethods } from './check-methods.ts';
import { columnType } from './columns.ts';
import { type CheckedDraft, checkFormulas, type Draft } from './formulas.ts';
import { readChoice, readGiven } from './inputs.ts';
import { withStatedJudged } from './judge-stated.ts';
import { type MethodPlan, planMethods } from './methods.ts';
import type {
  FormulaColumnItem,
  FormulaItem,
  InputColumnItem,
  InputItem,
  Item,
  Methods,
  Model,
  TableItem,
} from './model.ts';
import { type NamedPart, type Names, namesOf, resolveName } from './names.ts';
import type { Known } from './scope.ts';
import { reservedProblems } from './spelled-name.ts';
import { readStated, readStatedSides, typeOfStatement } from './stated.ts';
import { readStatedCells, type StatedCells } from './stated-column.ts';
import { readUnitColumn } from './unit-column.ts';

/**
 * Understands a book: reads its units, entries and formulas and finds every type. With the model of the book before
 * an edit, what the edit did not touch is taken over from it, object for object.
 */
export function buildModel(book: Book, before?: Model): Model {
  const { registry, problems } = registryOf(book, before);
  const names = namesOf(book);
  const sameUnits = before?.registry === registry;
  const inputs = new Map<string, InputItem | InputColumnItem>();
  const drafts: Draft[] = [];
  const unitProblems = new Map<string, readonly Problem[]>();
  for (const part of names.values()) {
    if (part.kind === 'table') continue;
    const again = sameUnits ? before.items.get(part.id) : undefined;
    const input = inputOf(part, names, registry, again);
    if (input) inputs.set(part.id, input);
  }
  const plans = new Map<string, MethodPlan>();
  const optionsById = (id: string): readonly string[] => optionsNamed(id, names);
  for (const part of names.values()) {
    if (part.kind === 'table' || inputs.has(part.id)) continue;
    const source = part.kind === 'row' ? part.row : part.column;
    const plan =
      source.kind === 'calc' && source.methods
        ? planMethods(part, source, names, inputs, optionsById)
        : undefined;
    const { draft, problems: found } = draftOf(part, registry, plan?.formula);
    if (draft) drafts.push(draft);
    if (plan) plans.set(part.id, plan);
    unitProblems.set(part.id, found);
  }
  const { checked, known } = checkFormulas(drafts, inputs, names, registry, (draft, known) =>
    sameUnits ? takenOver(draft, before, known, names) : undefined,
  );
  const fresh = new Map<string, Item>();
  const tables = new Map<string, TableItem>();
  const draftById = new Map(drafts.map((draft) => [draft.id, draft]));
  for (const part of names.values()) {
    if (part.kind === 'table') {
      tables.set(part.id, { id: part.id, sheet: part.sheet, part: part.table });
      continue;
    }
    const draft = draftById.get(part.id);
    const found = checked.get(part.id);
    const plan = plans.get(part.id);
    const withMethods =
      plan && draft && found
        ? checkMethods(plan, draft, found, {
            names,
            registry,
            known,
            reuse: (own) => (sameUnits ? methodTakenOver(own, before, known, names) : undefined),
          })
        : undefined;
    const problems = unitProblems.get(part.id) ?? [];
    const item = inputs.get(part.id) ?? formulaItem(part, draft, withMethods ?? found, problems, registry);
    if (item) fresh.set(part.id, item);
  }
  const items = new Map<string, Item>();
  for (const [id, item] of fresh) {
    const judged = withStatedJudged(item, fresh, (of) => textsEntered(of, names), registry);
    const old = before?.items.get(id);
    items.set(id, old && sameItem(old, judged) ? old : judged);
  }
  const tableProblems = [...tables.values()].flatMap(({ id, part }) =>
    reservedProblems(part.name).map((found) => inCell(found, id)),
  );
  const choosing = new Set([...plans.values()].flatMap(({ byId }) => byId ?? []));
  return { registry, items, tables, choosing, problems: [...problems, ...tableProblems] };
}

function registryOf(book: Book, before?: Model): { registry: UnitRegistry; problems: readonly Problem[] } {
  const { units, datums, currency } = book.settings;
  const extended = extendUnits(standardUnits, { units, datums, currency });
  if (!extended.ok) return { registry: standardUnits, problems: extended.problems };
  if (before && sameRegistry(before.registry, extended.value))
    return { registry: before.registry, problems: [] };
  return { registry: extended.value, problems: [] };
}

function sameRegistry(a: UnitRegistry, b: UnitRegistry): boolean {
  if (a.currency !== b.currency || a.units.size !== b.units.size || a.datums.size !== b.datums.size)
    return false;
  for (const datum of a.datums) if (!b.datums.has(datum)) return false;
  for (const [symbol, unit] of a.units) {
    const other = b.units.get(symbol);
    if (other?.factor !== unit.factor || other.dimension.key !== unit.dimension.key) return false;
    if (a.infos.get(symbol)?.system !== b.infos.get(symbol)?.system) return false;
  }
  return true;
}

function inputOf(
  part: Exclude<NamedPart, { kind: 'table' }>,
  names: Names,
  registry: UnitRegistry,
  again: Item | undefined,
): InputItem | InputColumnItem | undefined {
  if (part.kind === 'column') {
    if (part.column.kind !== 'given') return undefined;
    if (again?.kind === 'input column' && again.column === part.column) return again;
    return inputColumn(part.id, part.sheet, `${part.sheet}.${part.table.name}`, part.column, registry);
  }
  if (part.row.kind === 'given') {
    if (again?.kind === 'input' && again.row === part.row) return again;
    return readGiven(part.id, part.sheet, part.row, registry);
  }
  if (part.row.kind !== 'choice') return undefined;
  if (again?.kind === 'input' && again.row === part.row && part.row.options) return again;
  return readChoice(part.id, part.sheet, part.row, optionsOf(part.row, part.sheet, names));
}

/** The values a choice or a text column may take, by its id; empty where they are not listed. */
function optionsNamed(id: string, names: Names): readonly string[] {
  const part = names.get(id);
  if (part?.kind === 'row' && part.row.kind === 'choice') return optionsOf(part.row, part.sheet, names);
  return (part?.kind === 'column' && part.column.kind === 'given' && part.column.options) || [];
}

/** The texts that a choice or a text column may be: those it may take, else those that stand there. */
export function textsEntered(id: string, names: Names): readonly string[] {
  const part = names.get(id);
  const listed = optionsNamed(id, names);
  if (listed.length > 0 || part?.kind !== 'column' || part.column.kind !== 'given') return listed;
  return textsOfColumn(part.column);
}

function textsOfColumn({ chunks }: GivenColumn): readonly string[] {
  const texts = new Set(chunks.flat().flatMap((cell) => (cell === null ? [] : [`${cell}`.trim()])));
  return [...texts].filter((text) => text !== '');
}

/** The values a choice may take: its own list, or the texts of the column it names. */
export function optionsOf(choice: Choice, sheet: string, names: Names): readonly string[] {
  if (choice.options) return choice.options.map((option) => option.value);
  const source = choice.from === undefined ? undefined : resolveName(choice.from, names, sheet);
  if (source?.kind !== 'column' || source.column.kind !== 'given') return [];
  return source.column.chunks
    .flat()
    .flatMap((cell) => (cell === null || `${cell}` === '' ? [] : [`${cell}`]));
}

function inputColumn(
  id: string,
  sheet: string,
  table: string,
  column: GivenColumn,
  registry: UnitRegistry,
): InputColumnItem {
  const read = readUnitColumn(column.unit, registry);
  const { type, unit } = columnType(column, read.unit);
  return {
    kind: 'input column',
    id,
    sheet,
    table,
    column,
    type,
    problems: [...reservedProblems(column.name), ...read.problems],
    ...(unit && { unit }),
  };
}

function draftOf(
  part: Exclude<NamedPart, { kind: 'table' }>,
  registry: UnitRegistry,
  planned: string | undefined,
): { readonly draft?: Draft; readonly problems: readonly Problem[] } {
  const source = part.kind === 'row' ? part.row : part.column;
  if (source.kind === 'given' || source.kind === 'choice') return { problems: [] };
  const { unit, problems } = readUnitColumn(source.unit, registry);
  const { id, sheet } = part;
  const table = part.kind === 'column' ? { table: `${sheet}.${part.table.name}` } : {};
  const draft: Draft = {
    id,
    sheet,
    ...table,
    // A sound book has a formula where it has no methods.
    formula: planned ?? source.formula ?? '',
    ...(unit && { unit }),
    kind: source.kind,
    ...(part.kind === 'row' && part.row.kind === 'calc' && statedOf(part.row.stated, registry)),
    ...(part.kind === 'row' && part.row.kind === 'check' && aboutCheck(part.row)),
  };
  return { draft, problems: [...reservedProblems(source.name), ...problems] };
}

function aboutCheck({ applies, stated }: Check): Pick<Draft, 'applies' | 'sides'> {
  return { ...(applies !== undefined && { applies }), ...(stated && { sides: stated }) };
}

function statedOf(stated: Calc['stated'], registry: UnitRegistry): Pick<Draft, 'stated'> {
  if (!stated) return {};
  const type = typeOfStatement(stated, registry);
  return { stated: { entry: stated.entry, ...(type && { type }) } };
}

/** The check of an earlier model, if the formula, its unit and the types of all it names are the same. */
function takenOver(
  draft: Draft,
  before: Model,
  known: (id: string) => Known,
  names: Names,
): CheckedDraft | undefined {
  const old = before.items.get(draft.id);
  if (!old || (old.kind !== 'formula' && old.kind !== 'formula column')) return undefined;
  const source = old.kind === 'formula' ? old.row : old.column;
  if (source.kind !== draft.kind || old.unit?.text !== draft.unit?.text) return undefined;
  const stated = old.kind === 'formula' && old.row.kind === 'calc' ? old.row.stated?.entry : undefined;
  if (stated !== draft.stated?.entry) return undefined;
  if (draft.sides || (old.kind === 'formula' && old.sides)) return undefined;
  if (old.sheet !== draft.sheet || (old.kind === 'formula column' ? old.table : undefined) !== draft.table)
    return undefined;
  // Another choice puts another method in force, which was checked with the others for the unit of the line.
  const ofMethod = draft.unit && checkOfMethod(old, draft.formula);
  const checked = old.formula === draft.formula ? old.checked : ofMethod;
  if (!checked || !stillHolds(checked, before, known, names)) return undefined;
  const applies = old.kind === 'formula' ? old.applies : undefined;
  if (applies?.text !== draft.applies || (applies && !stillHolds(applies, before, known, names)))
    return undefined;
  return { checked, type: old.type, ...(applies && { applies }) };
}

/** The check of a method in an earlier model, if its formula, the unit of its line and all it names are the same. */
function methodTakenOver(
  draft: Draft,
  before: Model,
  known: (id: string) => Known,
  names: Names,
): CheckedFormula | undefined {
  const old = before.items.get(draft.id);
  if (old?.kind !== 'formula' && old?.kind !== 'formula column') return undefined;
  const table = old.kind === 'formula column' ? old.table : undefined;
  if (old.unit?.text !== draft.unit?.text || old.sheet !== draft.sheet || table !== draft.table)
    return undefined;
  const same = checkOfMethod(old, draft.formula);
  return same && stillHolds(same, before, known, names) ? same : undefined;
}

function checkOfMethod(
  { methods }: FormulaItem | FormulaColumnItem,
  formula: string,
): CheckedFormula | undefined {
  return methods?.list.find(({ method }) => method.formula === formula)?.checked;
}

/** Whether a check is as good as it was: it found nothing wrong, and all that the formula names is what it was. */
function stillHolds(
  checked: CheckedFormula,
  before: Model,
  known: (id: string) => Known,
  names: Names,
): boolean {
  // A formula with a problem may be mended by what came or changed elsewhere.
  if (checked.problems.length > 0 || checked.typed.kind === 'broken') return false;
  for (const id of checked.references) {
    const was = before.items.get(id);
    const now = known(id);
    if (!was || !names.has(id) || !sameType(was.type, now.type) || was.unit?.text !== now.unit?.text)
      return false;
  }
  return true;
}

/** Whether two types, axes aside, are the same. */
function sameType(a: Type, b: Type): boolean {
  if (a.kind === 'number' && b.kind === 'number')
    return a.dimension.key === b.dimension.key && a.angle === b.angle && a.zero === b.zero;
  if (a.kind === 'point' && b.kind === 'point') return a.of === b.of;
  return a.kind === b.kind;
}

function formulaItem(
  part: Exclude<NamedPart, { kind: 'table' }>,
  draft: Draft | undefined,
  found: CheckedDraft | CheckedMethods | undefined,
  problems: readonly Problem[],
  registry: UnitRegistry,
): FormulaItem | FormulaColumnItem | undefined {
  if (!draft || !found) return undefined;
  const { id, sheet, unit, formula } = draft;
  const methods = 'methods' in found ? { methods: found.methods } : {};
  const base = { id, sheet, problems, formula, ...methods, ...(unit && { unit }) };
  const type = problems.length > 0 ? unknownType : found.type;
  if (part.kind === 'row' && part.row.kind === 'calc') {
    const { stated } = part.row;
    const own = unit ? typeOfUnit(unit) : found.checked.typed.type;
    return {
      kind: 'formula',
      ...base,
      row: part.row,
      type,
      checked: found.checked,
      ...(stated && { stated: readStated(stated, own, unit, registry) }),
    };
  }
  if (part.kind === 'row' && part.row.kind === 'check') {
    const { stated } = part.row;
    const sides = stated && readStatedSides(stated, found.checked, unit, registry);
    const { applies } = found;
    return {
      kind: 'formula',
      ...base,
      problems: [...problems, ...(applies ? appliesFailures(applies) : [])],
      ...(applies && { applies }),
      row: part.row,
      type,
      checked: found.checked,
      ...(sides && { sides }),
      ...(found.fails && { fails: found.fails }),
    };
  }
  if (part.kind === 'column' && part.column.kind !== 'given') {
    const { column } = part;
    const own = unit ? typeOfUnit(unit) : onAxes(found.checked.typed.type, NO_AXES);
    const cells =
      column.kind === 'calc' && column.stated
        ? readStatedCells(column, part.table, own, unit, registry)
        : undefined;
    return {
      kind: 'formula column',
      ...base,
      table: `${sheet}.${part.table.name}`,
      column,
      type,
      checked: found.checked,
      ...(cells && cells.size > 0 && { cells }),
    };
  }
  return undefined;
}

function sameWords(a: readonly Problem[], b: readonly Problem[] = []): boolean {
  return a.length === b.length && a.every(({ message }, at) => message === b[at]?.message);
}

function sameItem(a: Item, b: Item): boolean {
  if (a === b) return true;
  if (a.kind === 'formula' && b.kind === 'formula')
    return (
      a.row === b.row &&
      a.checked === b.checked &&
      a.applies === b.applies &&
      sameWords(a.stated?.problems ?? [], b.stated?.problems) &&
      sameMethods(a.methods, b.methods)
    );
  if (a.kind === 'formula column' && b.kind === 'formula column')
    return (
      a.column === b.column &&
      a.checked === b.checked &&
      sameRows(a.cells, b.cells) &&
      sameMethods(a.methods, b.methods)
    );
  return false;
}

/** Whether the same statements stand in the same rows, and as much is wrong with each. */
function sameRows(a: StatedCells | undefined, b: StatedCells | undefined): boolean {
  if (!a || !b) return a === b;
  return (
    a.size === b.size &&
    [...b].every(([row, { problems }]) => {
      const old = a.get(row);
      return old !== undefined && sameWords(old.problems, problems);
    })
  );
}

function sameMethods(a: Methods | undefined, b: Methods | undefined): boolean {
  if (!a || !b) return a === b;
  return (
    a.chosen === b.chosen &&
    a.byId === b.byId &&
    a.list.length === b.list.length &&
    a.list.every(
      (one, at) =>
        one.checked === b.list[at]?.checked &&
        one.words === b.list[at]?.words &&
        sameWords(one.problems, b.list[at]?.problems),
    ) &&
    sameWords(a.remarks, b.remarks)
  );
}
