import {
  numberType,
  type Resolution,
  type Scope,
  type Type,
  textType,
  truthType,
  typeOfUnit,
} from '../../src/language/index.ts';
import { extendUnits, readUnit, standardUnits, type Unit } from '../../src/units/index.ts';

const registry = extendUnits(standardUnits, { datums: ['MLLW', 'NAVD88'] });
if (!registry.ok) throw new Error('the registry of the fixtures has a problem');

/** A unit of the fixtures; a broken one is a mistake in the fixture. */
export function unitNamed(text: string): Unit {
  const read = readUnit(text, registry.ok ? registry.value : standardUnits);
  if (!read.ok) throw new Error(`the fixture's unit ${text} cannot be read`);
  return read.value;
}

/** The type a fixture declares by a unit, or by the words text and truth. */
function typeNamed(text: string): { readonly type: Type; readonly unit?: Unit } {
  if (text === 'text') return { type: textType };
  if (text === 'truth') return { type: truthType };
  if (text === 'plain') return { type: numberType(unitNamed('').dimension) };
  const unit = unitNamed(text);
  return { type: typeOfUnit(unit), unit };
}

/**
 * The scope of a fixture. `names` are declared by unit: `b: ft`, `kind: text`; a name with a dot, `layers.top: m`, is
 * a column. `inTable` makes the formula a column formula of that table.
 */
export function fixtureScope(names: Readonly<Record<string, string>>, inTable?: string): Scope {
  const known = new Map<string, Resolution>();
  for (const [name, text] of Object.entries(names)) {
    const named = { id: `sheet.${name}`, ...typeNamed(text) };
    const [table, column] = name.split('.');
    if (column === undefined) known.set(name, { kind: 'cell', named });
    else {
      known.set(name, { kind: 'column', named, table: `sheet.${table}` });
      if (table === inTable) known.set(column, { kind: 'row', named, table: `sheet.${table}` });
      const columns = Object.keys(names).filter((other) => other.startsWith(`${table}.`));
      known.set(`${table}`, {
        kind: 'table',
        table: `sheet.${table}`,
        columns: columns.map((other) => other.split('.')[1] ?? ''),
      });
    }
  }
  return {
    units: registry.ok ? registry.value : standardUnits,
    resolve: (name) => known.get(name),
    names: () =>
      [...known].flatMap(([name, found]) =>
        found.kind === 'table' ? [] : [{ name, type: found.named.type }],
      ),
    ...(inTable !== undefined && { table: `sheet.${inTable}` }),
  };
}
