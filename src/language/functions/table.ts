import { aggregates } from './aggregates.ts';
import { angles } from './angles.ts';
import { arithmetic } from './arithmetic.ts';
import { chance } from './chance.ts';
import { conditionalAggregates } from './conditional-aggregates.ts';
import { dates } from './dates.ts';
import type { FunctionEntry } from './entry.ts';
import { logic } from './logic.ts';
import { lookup } from './lookup.ts';
import { powers } from './powers.ts';
import { rounding } from './rounding.ts';
import { rows } from './rows.ts';
import { texts } from './texts.ts';
import { typesetting } from './typesetting.ts';

const entries: readonly FunctionEntry[] = [
  ...arithmetic,
  ...rounding,
  ...powers,
  ...angles,
  ...logic,
  ...aggregates,
  ...conditionalAggregates,
  ...lookup,
  ...rows,
  ...chance,
  ...dates,
  ...texts,
];

/** Every function of the language. */
export const functionTable: readonly FunctionEntry[] = entries.map((entry) => ({
  ...entry,
  ...typesetting[entry.name],
}));

const byName: ReadonlyMap<string, FunctionEntry> = new Map(functionTable.map((entry) => [entry.name, entry]));

/** The function of a name, without regard to case; TRUE and FALSE are values, not functions. */
export function findFunction(name: string): FunctionEntry | undefined {
  return byName.get(name.toUpperCase());
}
