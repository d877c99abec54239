import { type ChangedIds, createEngine, type Engine, type Reading } from '../../src/engine/index.ts';
import {
  checkFormula,
  onAxes,
  type Resolution,
  type Scope,
  type Type,
  textType,
  truthType,
  typeOfUnit,
} from '../../src/language/index.ts';
import { readUnit, standardUnits, toSI, type Unit } from '../../src/units/index.ts';

/** One value as a test writes it: a number in its unit, a text, a truth value, or blank. */
export type Cell = number | string | boolean | null;

interface Declared {
  readonly id: string;
  readonly type: Type;
  readonly unit?: Unit;
  readonly table?: string;
}

/** A sheet named `s` over an engine, with formulas written as text. Names in formulas are without the sheet. */
export interface Sheet {
  readonly engine: Engine;
  /** Declares a name before it is set, so that formulas may come first. */
  readonly declare: (name: string, unit?: string) => void;
  readonly declareText: (name: string) => void;
  readonly given: (name: string, value: Cell, unit?: string) => void;
  readonly calc: (name: string, formula: string, unit?: string) => void;
  readonly table: (name: string, length: number) => void;
  /** All rows of a given column; the unit 'text' is for columns of texts. */
  readonly column: (name: string, values: readonly Cell[], unit?: string) => void;
  /** Some rows of a given column, from row `from` counted from 0. */
  readonly patch: (name: string, from: number, values: readonly Cell[], unit?: string) => void;
  readonly calcColumn: (name: string, formula: string, unit?: string) => void;
  readonly series: (name: string, formula: string, unit?: string) => void;
  readonly run: () => ChangedIds;
  readonly read: (name: string) => Reading;
  /** The rows of a column: SI numbers, texts, truth values, or the code of the problem ('missing' if blank). */
  readonly rows: (name: string) => readonly (number | string | boolean)[];
  /** The code of a cell's problem; throws if it has a value. */
  readonly codeOf: (name: string) => string;
}

/** Reads a unit a test writes. */
function unitOf(text: string): Unit {
  const unit = readUnit(text, standardUnits);
  if (!unit.ok) throw new Error(`no unit ${text}`);
  return unit.value;
}

/** A sheet without cells. */
export function newSheet(engine: Engine = createEngine()): Sheet {
  const declared = new Map<string, Declared>();
  const tables = new Set<string>();

  const remember = (name: string, type: Type, unit: string | undefined): void => {
    const table = name.includes('.') ? `s.${name.slice(0, name.indexOf('.'))}` : undefined;
    declared.set(name, {
      id: `s.${name}`,
      type: onAxes(type, []),
      ...(unit !== undefined && { unit: unitOf(unit) }),
      ...(table !== undefined && { table }),
    });
  };

  const scopeAt = (table: string | undefined): Scope => ({
    units: standardUnits,
    ...(table !== undefined && { table: `s.${table}` }),
    names: () => [...declared].map(([name, { type }]) => ({ name, type })),
    resolve: (name): Resolution | undefined => {
      const own = table === undefined ? undefined : declared.get(`${table}.${name}`);
      if (own) return { kind: 'row', named: own, table: `s.${table}` };
      const found = declared.get(name);
      if (found)
        return found.table
          ? { kind: 'column', named: found, table: found.table }
          : { kind: 'cell', named: found };
      return tables.has(name) ? { kind: 'table', table: `s.${name}`, columns: [] } : undefined;
    },
  });

  const setFormula = (name: string, formula: string, unit: string | undefined, series: boolean): void => {
    const table = name.includes('.') ? name.slice(0, name.indexOf('.')) : undefined;
    const expected = { series, ...(unit !== undefined && { unit: unitOf(unit) }) };
    const checked = checkFormula(formula, scopeAt(table), expected);
    const [problem] = checked.problems;
    if (problem) throw new Error(`${name} = ${formula}: ${problem.message}`);
    remember(name, checked.typed.type, unit ?? undefined);
    engine.setFormula(`s.${name}`, checked.typed, {
      text: checked.text,
      ...(table !== undefined && { table: `s.${table}` }),
    });
  };

  const typeOf = (value: Cell, unit: string | undefined): Type => {
    if (typeof value === 'string') return textType;
    if (typeof value === 'boolean') return truthType;
    return typeOfUnit(unitOf(unit ?? ''));
  };

  const numbers = (values: readonly Cell[], unit: string | undefined): Float64Array =>
    Float64Array.from(values, (value) => {
      if (value === null) return Number.NaN;
      if (typeof value === 'string') return engine.texts.codeOf(value);
      return typeof value === 'boolean' ? Number(value) : toSI(value, unitOf(unit ?? ''));
    });

  const shown = (reading: Reading): number | string | boolean => {
    if (reading.status === 'ok') return reading.value;
    return reading.status === 'missing' ? 'missing' : reading.problem.code;
  };

  return {
    engine,
    declare: (name, unit) => remember(name, typeOf(0, unit), unit),
    declareText: (name) => remember(name, textType, undefined),
    given: (name, value, unit) => {
      remember(name, typeOf(value, unit), unit);
      if (typeof value === 'string') engine.setInputText(`s.${name}`, value);
      else if (value === null) engine.setInput(`s.${name}`, { missing: true });
      else engine.setInput(`s.${name}`, typeof value === 'boolean' ? value : toSI(value, unitOf(unit ?? '')));
    },
    calc: (name, formula, unit) => setFormula(name, formula, unit, false),
    table: (name, length) => {
      tables.add(name);
      engine.setTableLength(`s.${name}`, length);
    },
    column: (name, values, unit) => {
      const sample = unit === 'text' ? '' : (values.find((value) => value !== null) ?? 0);
      remember(name, typeOf(sample, unit), unit === 'text' ? undefined : unit);
      const { id, table, type } = declared.get(name) as Declared;
      const holds = type.kind === 'text' || type.kind === 'truth' ? type.kind : 'number';
      engine.setColumn(id, table as string, numbers(values, unit), { holds });
    },
    patch: (name, from, values, unit) => engine.patchColumn(`s.${name}`, from, numbers(values, unit)),
    calcColumn: (name, formula, unit) => setFormula(name, formula, unit, false),
    series: (name, formula, unit) => setFormula(name, formula, unit, true),
    run: () => engine.recalculate(),
    read: (name) => engine.read(`s.${name}`),
    rows: (name) => {
      const column = engine.readColumn(`s.${name}`);
      return Array.from({ length: column.length }, (_, row) => shown(column.at(row)));
    },
    codeOf: (name) => {
      const reading = engine.read(`s.${name}`);
      if (reading.status === 'ok') throw new Error(`${name} has the value ${reading.value}`);
      return reading.status === 'missing' ? 'missing' : reading.problem.code;
    },
  };
}
