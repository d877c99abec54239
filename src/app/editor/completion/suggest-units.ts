import { describeType, type Type, typeOfUnit } from '../../../language/index.ts';
import {
  type PointKind,
  preferredUnit,
  quantityName,
  readUnit,
  suggestUnits,
  type Unit,
  type UnitRegistry,
} from '../../../units/index.ts';
import type { Suggestion } from './suggestion.ts';

/**
 * Units by what they are asked for: of the wanted type first, the preferred one of the book's system before all; then
 * all others; money last.
 */
export function unitSuggestions(
  registry: UnitRegistry,
  wanted: Type | undefined,
  system: 'SI' | 'US',
): readonly Suggestion[] {
  const first = wanted ? unitsOf(wanted, registry, system) : [];
  const shown = new Set(first.map(({ text }) => text));
  const rest = [...registry.infos.values()].flatMap(({ symbol, source }) => {
    const unit = registry.units.get(symbol);
    const isMoney = source === 'ISO 4217' && symbol !== registry.currency;
    return !unit || shown.has(symbol) ? [] : [unitSuggestion(registry, unit, isMoney ? 0 : 10)];
  });
  return [...first.map((unit, index) => unitSuggestion(registry, unit, Math.max(99 - index, fits))), ...rest];
}

/** The least rank of a unit of the wanted type. */
export const fits = 60;

function unitsOf(wanted: Type, registry: UnitRegistry, system: 'SI' | 'US'): readonly Unit[] {
  if (wanted.kind === 'point') return pointUnits(wanted.of, registry, system);
  if (wanted.kind !== 'number') return [];
  const { dimension, angle } = wanted;
  const preferred = preferredUnit(dimension, angle, system, registry);
  const others = suggestUnits(dimension, angle, registry).filter(({ text }) => text !== preferred.text);
  return [preferred, ...others].filter(({ text }) => text !== '');
}

function pointUnits(of: PointKind, registry: UnitRegistry, system: 'SI' | 'US'): readonly Unit[] {
  if (!of.startsWith('elevation:')) return [...registry.units.values()].filter(({ point }) => point === of);
  const lengths = system === 'US' ? ['ft', 'm'] : ['m', 'ft'];
  return lengths.flatMap((length) => {
    const unit = readUnit(`${length} ${of.slice('elevation:'.length)}`, registry);
    return unit.ok ? [unit.value] : [];
  });
}

/** One unit: its name, else what it measures. One that is no single symbol is written in parentheses. */
function unitSuggestion(registry: UnitRegistry, unit: Unit, rank: number): Suggestion {
  const { text } = unit;
  const isSymbol = registry.units.has(text);
  const name = registry.infos.get(text)?.name ?? '';
  const measures = describeKind(unit, registry);
  return {
    kind: 'unit',
    text,
    ...(!isSymbol && { insert: `(${text})` }),
    detail: [name, measures].filter((words) => words !== '').join(', '),
    rank,
  };
}

function describeKind(unit: Unit, registry: UnitRegistry): string {
  return unit.point ? describeType(typeOfUnit(unit), registry) : quantityName(unit.dimension, unit.angle);
}
