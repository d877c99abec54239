import type { Type } from '../../language/index.ts';
import { quantityName, suggestUnits, type Unit, type UnitRegistry } from '../../units/index.ts';
import type { Suggestion } from './suggestion.ts';

/** Units by what they are asked for: of the wanted dimension first, in their own order; then all; money last. */
export function unitSuggestions(registry: UnitRegistry, wanted: Type | undefined): readonly Suggestion[] {
  const first =
    wanted?.kind === 'number'
      ? suggestUnits(wanted.dimension, wanted.angle, registry)
      : pointUnits(registry, wanted);
  const shown = new Set(first.map(({ text }) => text));
  const rest = [...registry.infos.values()].flatMap(({ symbol, source }) => {
    const unit = registry.units.get(symbol);
    const isMoney = source === 'ISO 4217';
    return !unit || shown.has(symbol)
      ? []
      : [unitSuggestion(registry, unit, isMoney && symbol !== registry.currency ? 0 : 10)];
  });
  return [
    ...first
      .filter(({ text }) => text !== '')
      .map((unit, index) => unitSuggestion(registry, unit, Math.max(99 - index, 60))),
    ...rest,
  ];
}

function pointUnits(registry: UnitRegistry, wanted: Type | undefined): readonly Unit[] {
  if (wanted?.kind !== 'point') return [];
  return [...registry.units.values()].filter(({ point }) => point === wanted.of);
}

/** One unit: its name, else what it measures. One that is no single symbol is written in parentheses. */
function unitSuggestion(registry: UnitRegistry, unit: Unit, rank: number): Suggestion {
  const { text } = unit;
  const isSymbol = registry.units.has(text);
  const name = registry.infos.get(text)?.name ?? '';
  const measures = unit.point ? 'a point' : quantityName(unit.dimension, unit.angle);
  return {
    kind: 'unit',
    text,
    ...(!isSymbol && { insert: `(${text})` }),
    detail: [name, measures].filter((words) => words !== '').join(', '),
    rank,
  };
}
