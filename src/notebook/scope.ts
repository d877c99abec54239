import type { Resolution, Scope, Type } from '../language/index.ts';
import type { Unit, UnitRegistry } from '../units/index.ts';
import { type NamedPart, type Names, resolveName } from './names.ts';

/** What the checker needs to know of a name when a formula refers to it. */
export interface Known {
  readonly type: Type;
  readonly unit?: Unit;
}

/** Where a formula stands: the line or column `id` of a sheet; `table` is `sheet.table` for a column. */
interface Standing {
  readonly id: string;
  readonly sheet: string;
  readonly table?: string;
}

/** The names seen from where a formula stands. */
export function scopeOf(
  names: Names,
  registry: UnitRegistry,
  known: (id: string) => Known,
  { id, sheet, table }: Standing,
): Scope {
  const resolve = (name: string): Resolution | undefined => {
    const part = resolveName(name, names, sheet, table);
    return part && resolution(part, known, !name.includes('.') ? table : undefined);
  };
  return {
    units: registry,
    resolve,
    names: () => visibleNames(names, known, { id, sheet, ...(table !== undefined && { table }) }),
    ...(table !== undefined && { table }),
  };
}

function resolution(part: NamedPart, known: (id: string) => Known, rowOf: string | undefined): Resolution {
  if (part.kind === 'table')
    return { kind: 'table', table: part.id, columns: part.table.columns.map((column) => column.name) };
  const { type, unit } = known(part.id);
  const { label } = part.kind === 'row' ? part.row : part.column;
  const named = { id: part.id, type, ...(unit && { unit }), ...(label !== undefined && { label }) };
  if (part.kind === 'row') return { kind: 'cell', named };
  const table = `${part.sheet}.${part.table.name}`;
  return { kind: rowOf === table ? 'row' : 'column', named, table };
}

/** All but the line's own name, which would be a loop. */
function* visibleNames(names: Names, known: (id: string) => Known, { id, sheet, table }: Standing) {
  for (const part of names.values()) {
    if (part.kind === 'table' || part.id === id) continue;
    const { type } = known(part.id);
    if (part.kind === 'column' && `${part.sheet}.${part.table.name}` === table)
      yield { name: part.column.name, type };
    if (part.sheet === sheet) yield { name: part.id.slice(sheet.length + 1), type };
    else yield { name: part.id, type, sheet: part.sheet };
  }
}
