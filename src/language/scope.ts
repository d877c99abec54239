import type { Unit, UnitRegistry } from '../units/index.ts';
import type { Type } from './type.ts';

/** A cell or column a formula may name. `type` is axis-free; the way it is named decides its axes. */
export interface Named {
  /** `sheet.name` or `sheet.table.column`. */
  readonly id: string;
  readonly type: Type;
  /** The unit the person reads it in. */
  readonly unit?: Unit;
  readonly label?: string;
}

/** What a name of one to three parts stands for where the formula stands. */
export type Resolution =
  | { readonly kind: 'cell'; readonly named: Named }
  /** A bare column name in a formula of the same table: this row's value. */
  | { readonly kind: 'row'; readonly named: Named; readonly table: string }
  /** A whole column. */
  | { readonly kind: 'column'; readonly named: Named; readonly table: string }
  /** A table's name alone, which is no value. */
  | { readonly kind: 'table'; readonly table: string; readonly columns: readonly string[] };

/** A name that may be written in a formula; `sheet` is the one in front of it, if that is not the formula's own. */
export interface VisibleName {
  readonly name: string;
  readonly type: Type;
  readonly sheet?: string;
}

/** The names a formula sees, and the units it may write. */
export interface Scope {
  readonly units: UnitRegistry;
  readonly resolve: (name: string) => Resolution | undefined;
  /** The names that may be written here, with their types, for the nearest of the right dimension. */
  readonly names: () => Iterable<VisibleName>;
  /** `sheet.table` where the formula is a column's, else absent. */
  readonly table?: string;
}
