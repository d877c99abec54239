import type { Engine } from '../engine/index.ts';
import { type CheckedFormula, sameKind, type Type, type Typed } from '../language/index.ts';
import type { Unit } from '../units/index.ts';
import type { FormulaColumnItem, FormulaItem, Model } from './model.ts';
import { readValue, unitOf, unitOfType } from './read-result.ts';
import type { Value } from './result.ts';

/** Where a part of a formula is computed: the formula as it was checked, its line or column. */
export interface PartPlace {
  readonly item: FormulaItem | FormulaColumnItem;
  readonly checked: CheckedFormula;
  /** Of a column, the row (from 0). */
  readonly row?: number;
  /** Within an aggregate, the row (from 0) of the table that it runs over. */
  readonly element?: { readonly table: string; readonly at: number };
}

/** The parts of the formulas of a book, computed against the values as they stand. Nothing changes. */
export interface FormulaParts {
  /** What a part comes to; undefined where it has no value. */
  readonly valueOf: (part: Typed, place: PartPlace) => Value | undefined;
  /** What a part that runs over the whole columns of one table comes to in its rows; undefined for others, and while it is pending. */
  readonly elementsOf: (part: Typed, place: PartPlace) => Elements | undefined;
}

/** The values of a part row by row. */
export interface Elements {
  /** In SI, truth 1 or 0, texts by code; NaN without a value. */
  readonly values: Float64Array;
  /** The value in a row (from 0); undefined where there is none. */
  readonly at: (row: number) => Value | undefined;
}

/** What parts are computed with, as it is at the moment. */
interface Source {
  readonly model: Model;
  readonly engine: Engine;
  readonly system: 'SI' | 'US';
}

/** Computes parts of formulas where they stand. */
export function formulaParts(source: Source): FormulaParts {
  const trialPlace = ({ item, checked, row, element }: PartPlace) => ({
    text: checked.text,
    ...(item.kind === 'formula column' && row !== undefined && { table: item.table, row }),
    ...(element && { element }),
  });
  return {
    valueOf: (part, place) => {
      const over = place.element?.table;
      if (!hasRow(part, place) || freshTables(part).some((table) => table !== over)) return undefined;
      const read = source.engine.tryFormula(part, trialPlace(place));
      return read.status === 'ok' ? readValue(read.value, unitOfPart(part, place, source)) : undefined;
    },
    elementsOf: (part, place) => {
      const { engine } = source;
      if (!hasRow(part, place) || freshTables(part).length !== 1) return undefined;
      const values = engine.tryElements(part, trialPlace(place));
      if (!values) return undefined;
      const unit = unitOfPart(part, place, source);
      const { kind } = part.type;
      const raw = (value: number): number | string | boolean => {
        if (kind === 'text') return engine.texts.textOf(value);
        return kind === 'truth' ? value === 1 : value;
      };
      return {
        values,
        at: (row) => {
          const value = values[row];
          return value === undefined || Number.isNaN(value) ? undefined : readValue(raw(value), unit);
        },
      };
    },
  };
}

function freshTables({ type: { axes } }: Typed): readonly string[] {
  return axes.flatMap(({ fresh, table }) => (fresh ? [table] : []));
}

/** Whether a part that differs from row to row has a row to be computed in. */
function hasRow({ type: { axes } }: Typed, { row }: PartPlace): boolean {
  return row !== undefined || axes.every(({ fresh }) => fresh);
}

/** The unit a part is read in: that of the first name of its kind in it, else the line's own, else the book's preferred one. */
function unitOfPart(part: Typed, { item }: PartPlace, { model, system }: Source): Unit {
  const named = unitNamedIn(part, part.type, model, system);
  if (named) return named;
  return sameKind(part.type, item.type) ? unitOf(item, model, system) : unitOfType(part.type, model, system);
}

function unitNamedIn(part: Typed, type: Type, model: Model, system: 'SI' | 'US'): Unit | undefined {
  if (!sameKind(part.type, type)) return undefined;
  const within = (inner: Typed | undefined): Unit | undefined =>
    inner && unitNamedIn(inner, type, model, system);
  switch (part.kind) {
    case 'cell':
    case 'column': {
      const item = model.items.get(part.id);
      return item && unitOf(item, model, system);
    }
    case 'number':
      return part.unit;
    case 'negate':
      return within(part.operand);
    case 'arithmetic':
      return part.op === '+' || part.op === '-' ? (within(part.left) ?? within(part.right)) : undefined;
    case 'above':
    case 'known':
      return within(part.column);
    case 'branch':
      return part.arms.map(({ value }) => within(value)).find((unit) => unit !== undefined);
    case 'call':
      // What is looked up stands behind what it is looked up by.
      return part.args
        .toReversed()
        .map(within)
        .find((unit) => unit !== undefined);
    default:
      return undefined;
  }
}
