export { isBareNumber } from './bare-number.ts';
export { barePercent, isPerCent, mayBeShare, shareText } from './bare-percent.ts';
export { withPowerSigns } from './bare-powers.ts';
export { type CalendarDate, dateFromSI, dateToSI, writeDate } from './calendar.ts';
export {
  baseDimension,
  type Dimension,
  describeDimension,
  isTameDimension,
  overDimension,
  PLAIN,
  powerDimension,
  sameDimension,
  timesDimension,
} from './dimension.ts';
export {} from './elevation.ts';
export type { Entry } from './entry.ts';
export { areEqual, EQUALITY, withoutDust } from './equal-numbers.ts';
export { extendUnits, type UnitDefinition, type UnitExtension } from './extend-units.ts';
export {} from './fit-entry.ts';
export { entryInPrint, numberInPrint, quantityInPrint, unitInPrint, withTrueMinus } from './in-print.ts';
export { normaliseLookAlikes } from './look-alikes.ts';
export { unitInSystem } from './other-system.ts';
export { preferredUnit, quantityName, suggestUnits } from './preferred-unit.ts';
export { type Rational, rational } from './rational.ts';
export { readEntry } from './read-entry.ts';
export { readUnit } from './read-unit.ts';
export { standardUnits, type UnitInfo, type UnitRegistry } from './registry.ts';
export { writeDecimals } from './round-decimal.ts';
export { MARGIN, roundingMargin } from './rounding-margin.ts';
export { DATE_UNIT, fromSI, PLAIN_UNIT, type PointKind, toSI, type Unit } from './unit.ts';
export { type VolumeState, volumeState } from './volume-states.ts';
export { type NumberStyle, writeNumber } from './write-number.ts';
export { isMoney, writeIn, writeQuantity } from './write-quantity.ts';
