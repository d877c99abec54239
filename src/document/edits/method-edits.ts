import type { JsonValue } from '../../diagnostics/index.ts';
import type { ColumnPlace, RowPlace } from '../find.ts';
import type { CalcColumn } from '../schema/columns.ts';
import type { Method } from '../schema/methods.ts';
import type { Calc } from '../schema/rows.ts';
import { setPatch } from './book-edits.ts';
import type { Edit, Patch } from './patch.ts';

/** Where a calculated line or column stands. */
export type CalcPlace = RowPlace | ColumnPlace;

/** A field of a method that an edit sets. */
export type MethodField = Exclude<keyof Method, 'id'>;

/** Has a line of one formula computed by methods instead; its reference and note go with the formula they are about. */
export function useMethods(
  place: CalcPlace,
  { reference, note }: Calc | CalcColumn,
  by: string,
  methods: readonly Method[],
): Edit {
  const at = linePath(place);
  const patches: Patch[] = [
    setPatch([...at, 'formula'], undefined),
    setPatch([...at, 'by'], by),
    setPatch([...at, 'methods'], methods),
  ];
  if (reference !== undefined) patches.push(setPatch([...at, 'reference'], undefined));
  if (note !== undefined) patches.push(setPatch([...at, 'note'], undefined));
  return { label: 'choose between methods', patches };
}

/** Has a line of methods computed by the formula of one of them, whose reference and note become those of the line. */
export function useOneFormula(place: CalcPlace, line: Calc | CalcColumn, id: string): Edit {
  const at = linePath(place);
  const method = line.methods?.find((one) => one.id === id);
  const patches: Patch[] = [
    setPatch([...at, 'methods'], undefined),
    setPatch([...at, 'by'], undefined),
    setPatch([...at, 'formula'], method?.formula),
  ];
  if (method?.reference !== undefined) patches.push(setPatch([...at, 'reference'], method.reference));
  if (method?.note !== undefined) patches.push(setPatch([...at, 'note'], method.note));
  return { label: 'keep one method', patches };
}

/** Sets the name of what chooses between the methods of a line. */
export function setMethodsBy(place: CalcPlace, by: string): Edit {
  return { label: 'change what chooses the method', patches: [setPatch([...linePath(place), 'by'], by)] };
}

/** Puts a method in front of position `index` of a line. */
export function insertMethod(place: CalcPlace, index: number, method: Method): Edit {
  const at = [...linePath(place), 'methods'];
  return { label: 'add a method', patches: [{ kind: 'insert', at, index, value: method }] };
}

/** Takes a method out of its line; the last one stays. */
export function removeMethod(place: CalcPlace, id: string): Edit {
  return { label: 'remove a method', patches: [{ kind: 'remove', at: methodPath(place, id) }] };
}

/** Moves a method to position `to` among the other methods of its line. */
export function moveMethod(place: CalcPlace, id: string, to: number): Edit {
  return { label: 'move a method', patches: [{ kind: 'move', at: methodPath(place, id), to }] };
}

/** Sets a field of a method; `undefined` takes an optional one away. */
export function setMethodField(
  place: CalcPlace,
  id: string,
  field: MethodField,
  value: JsonValue | undefined,
): Edit {
  const label = `change a method’s ${field === 'for' ? 'options' : field}`;
  return { label, patches: [setPatch([...methodPath(place, id), field], value)] };
}

function methodPath(place: CalcPlace, id: string): readonly string[] {
  return [...linePath(place), 'methods', id];
}

function linePath(place: CalcPlace): readonly string[] {
  return 'row' in place
    ? ['sheets', place.sheet, 'parts', place.part, 'rows', place.row]
    : ['sheets', place.sheet, 'parts', place.table, 'columns', place.column];
}
