import type { Problem } from '../diagnostics/index.ts';
import { readUnit, type Unit, type UnitRegistry } from '../units/index.ts';

/** The unit column of a line: nothing where it is blank or broken, with what is wrong with it. */
export function readUnitColumn(
  text: string | undefined,
  registry: UnitRegistry,
): { readonly unit?: Unit; readonly problems: readonly Problem[] } {
  if (text === undefined || text.trim() === '') return { problems: [] };
  const read = readUnit(text, registry);
  return read.ok ? { unit: read.value, problems: [] } : { problems: read.problems };
}
