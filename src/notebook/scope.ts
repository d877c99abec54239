import type { Resolution, Scope, Type } from '../language/index.ts';
import type { Unit, UnitRegistry } from '../units/index.ts';
import { type NamedPart, type Names, resolveName } from './names.ts';

/** What the checker needs to know of a name when a formula refers to it. */
export interface Known {
  readonly type: Type;
  readonly unit?: Unit;
}

/** The names seen from a sheet, or from a column formula of a table of it (`table` is `sheet.table`). */
export function scopeOf(
  names: Names,
  registry: UnitRegistry,
  known: (id: string) => Known,
  sheet: string,
  table?: string,
): Scope {
  const resolve = (name: string): Resolution | undefined => {
    const part = resolveName(name, names, sheet, table);
    return part && resolution(part, known, !name.includes('.') ? table : undefined);
  };
  return {
    units: registry,
    resolve,
    names: () => visibleNames(names, known, sheet, table),
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

function* visibleNames(names: Names, known: (id: string) => Known, sheet: string, table?: string) {
  for (const part of names.values()) {
    if (part.kind === 'table') continue;
    const { type } = known(part.id);
    if (part.kind === 'column' && `${part.sheet}.${part.table.name}` === table)
      yield { name: part.column.name, type };
    yield { name: part.sheet === sheet ? part.id.slice(sheet.length + 1) : part.id, type };
  }
}
