import { listed, type Problem } from '../../diagnostics/index.ts';
import { type Book, type Edit, joinEdits, type Settings, setSettings } from '../../document/index.ts';
import { extendUnits, standardUnits, type UnitRegistry } from '../../units/index.ts';

/** A unit of the book while it is being typed. */
export interface DraftUnit {
  readonly symbol: string;
  readonly definition: string;
  readonly note: string;
}

/** The settings of a book while they are being typed; datums stand in one text, apart by commas. */
export interface Draft {
  readonly system: Settings['system'];
  readonly currency: string;
  readonly units: readonly DraftUnit[];
  readonly datums: string;
  readonly printedTables: 'short' | 'whole';
}

/** Why parts of a draft are refused, in sentences; empty where nothing is. `units` has one for each unit. */
export interface DraftTroubles {
  readonly currency: string;
  readonly units: readonly string[];
  readonly datums: string;
}

/** The settings as the dialog shows them. */
export function draftOf({ system, currency, units, datums, printedTables = 'short' }: Settings): Draft {
  const drafted = units.map(({ symbol, definition, note }) => ({ symbol, definition, note: note ?? '' }));
  return { system, currency, units: drafted, datums: datums.join(', '), printedTables };
}

/** The settings a draft stands for; units left wholly blank are none. */
function settingsOf(draft: Draft): Required<Settings> {
  return {
    system: draft.system,
    currency: draft.currency.trim().toUpperCase(),
    units: draft.units.filter(isFilled).map(({ symbol, definition, note }) => ({
      symbol: symbol.trim(),
      definition: definition.trim(),
      ...(note.trim() !== '' && { note: note.trim() }),
    })),
    datums: draft.datums
      .split(',')
      .map((datum) => datum.trim())
      .filter((datum) => datum !== ''),
    printedTables: draft.printedTables,
  };
}

const isFilled = ({ symbol, definition, note }: DraftUnit): boolean =>
  `${symbol}${definition}${note}`.trim() !== '';

/** What the registry of units has against a draft. A unit may use the ones above it. */
export function troublesOf(draft: Draft): DraftTroubles {
  const { currency, datums } = settingsOf(draft);
  let registry: UnitRegistry = standardUnits;
  const extended = (extension: Parameters<typeof extendUnits>[1]): string => {
    const read = extendUnits(registry, extension);
    if (!read.ok) return inWords(read.problems);
    registry = read.value;
    return '';
  };
  return {
    currency: extended({ currency }),
    datums: datums.map((datum) => extended({ datums: [datum] })).find((words) => words !== '') ?? '',
    units: draft.units.map((unit) => {
      if (!isFilled(unit)) return '';
      return extended({ units: [{ symbol: unit.symbol.trim(), definition: unit.definition.trim() }] });
    }),
  };
}

function inWords(problems: readonly Problem[]): string {
  return problems.map(({ message, hints }) => [message, ...hints].join('; ')).join('. ');
}

/** The edit that puts the settings of a draft into a book; undefined if nothing changes. */
export function settingsEdit({ settings }: Book, draft: Draft): Edit | undefined {
  const wanted = settingsOf(draft);
  const fields = ['system', 'currency', 'units', 'datums', 'printedTables'] as const;
  const held = { printedTables: 'short', ...settings };
  const changed = fields.filter((field) => JSON.stringify(wanted[field]) !== JSON.stringify(held[field]));
  if (changed.length === 0) return undefined;
  const label = `change the book’s ${listed(changed.map((field) => (field === 'printedTables' ? 'printing' : field)))}`;
  return joinEdits(
    label,
    changed.map((field) => setSettings(field, wanted[field])),
  );
}
