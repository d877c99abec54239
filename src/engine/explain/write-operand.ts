import {
  holdsDateDifference,
  type NumberType,
  partsOf,
  type Type,
  type Typed,
} from '../../language/index.ts';
import {
  DATE_UNIT,
  preferredUnit,
  readUnit,
  type Unit,
  type UnitRegistry,
  writeQuantity,
} from '../../units/index.ts';

/** How values are put in words: in the unit the person wrote, else in a sensible one of this system. */
export interface Wording {
  readonly units: UnitRegistry;
  readonly system: 'SI' | 'US';
  /** How a line or column is described, by its id. */
  readonly labelOf?: (id: string) => string | undefined;
  /** The words that a person reads of a text that a line has, by its id: those of the option of a choice. */
  readonly wordsOf?: (id: string, text: string) => string | undefined;
}

/** A text that a part has, in the words that a person reads of it. */
export function textInWords(text: string, node: Typed, { wordsOf }: Wording): string {
  return (node.kind === 'cell' && wordsOf?.(node.id, text)) || text;
}

/** A number or point of a part in words: "4.5 kN". Truth is TRUE or FALSE; texts are given as they are. */
export function writeOperand(
  si: number,
  node: Typed,
  wording: Wording,
  textOf: (code: number) => string,
): string {
  switch (node.type.kind) {
    case 'text':
      return `"${textInWords(textOf(si), node, wording)}"`;
    case 'truth':
      return si === 1 ? 'TRUE' : 'FALSE';
    default:
      return writeQuantity(
        si,
        unitOf(node, node.type) ?? unitOfDays(node, wording) ?? sensibleUnit(node.type, wording),
      );
  }
}

/** The unit written somewhere in a part for a value of this type. */
function unitOf(node: Typed, type: Type): Unit | undefined {
  if (node.kind === 'number' || node.kind === 'cell' || node.kind === 'column')
    return node.unit && measures(node.unit, type) ? node.unit : undefined;
  for (const part of partsOf(node)) {
    const found = unitOf(part, type);
    if (found) return found;
  }
  return undefined;
}

/** A time between dates is told in days. */
function unitOfDays(node: Typed, { units }: Wording): Unit | undefined {
  const isTime = node.type.kind === 'number' && node.type.dimension.key === 'T';
  return isTime && holdsDateDifference(node) ? units.units.get('d') : undefined;
}

function measures(unit: Unit, type: Type): boolean {
  if (type.kind === 'point') return unit.point === type.of;
  if (type.kind !== 'number' || unit.point !== undefined) return false;
  return unit.dimension.key === type.dimension.key && unit.angle === type.angle;
}

function sensibleUnit(type: Type, { units, system }: Wording): Unit {
  if (type.kind !== 'point') {
    const { dimension, angle } = type as NumberType;
    return preferredUnit(dimension, angle, system, units);
  }
  if (type.of === 'date') return DATE_UNIT;
  const length = system === 'SI' ? 'm' : 'ft';
  const temperature = system === 'SI' ? 'degC' : 'degF';
  const text =
    type.of === 'temperature' ? temperature : `${length} ${type.of.slice('elevation:'.length)}`.trim();
  const unit = readUnit(text, units);
  if (!unit.ok) throw new Error(`no unit for a point of the kind ${type.of}`);
  return unit.value;
}
