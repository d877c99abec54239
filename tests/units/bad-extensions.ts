import type { ProblemCode } from '../../src/diagnostics/index.ts';
import type { UnitExtension } from '../../src/units/index.ts';

/** What a book cannot define, and the code it is told with. */
export const BAD_EXTENSIONS: readonly {
  readonly says: string;
  readonly extension: UnitExtension;
  readonly codes: readonly ProblemCode[];
}[] = [
  { says: 'a known unit', extension: define('ft', '1 m'), codes: ['define-taken'] },
  { says: 'a currency', extension: define('USD', '1 EUR'), codes: ['define-taken'] },
  { says: 'a symbol with two meanings', extension: define('lb', '1 lbf'), codes: ['define-taken'] },
  { says: 'a datum as a unit', extension: define('MLLW', 'base'), codes: ['define-taken'] },
  { says: 'the sign of a dimension', extension: define('Θ', 'base'), codes: ['define-taken'] },
  { says: 'the word date', extension: define('date', '1 d'), codes: ['define-taken'] },
  { says: 'a symbol with a digit', extension: define('m2', 'base'), codes: ['define-symbol'] },
  { says: 'an empty symbol', extension: define('', 'base'), codes: ['define-symbol'] },
  { says: 'a long symbol', extension: define('abcdefghijklm', 'base'), codes: ['define-symbol'] },
  { says: 'a symbol with a space', extension: define('work day', '8 h'), codes: ['define-symbol'] },
  { says: 'a definition in words', extension: define('shift', 'ten hours'), codes: ['define-size'] },
  { says: 'a blank definition', extension: define('shift', ''), codes: ['define-size'] },
  { says: 'a negative size', extension: define('shift', '-10 h'), codes: ['define-size'] },
  { says: 'no size', extension: define('shift', '0 h'), codes: ['define-size'] },
  { says: 'a temperature', extension: define('warm', '20 degC'), codes: ['define-size'] },
  { says: 'a unit nobody knows', extension: define('shift', '10 quux'), codes: ['unit-unknown'] },
  { says: 'a unit of itself', extension: define('shift', '2 shift'), codes: ['unit-unknown'] },
  { says: 'a datum with a space', extension: { datums: ['Port Datum'] }, codes: ['define-datum'] },
  { says: 'a datum called like a unit', extension: { datums: ['kN'] }, codes: ['define-taken'] },
  { says: 'a currency in small letters', extension: { currency: 'usd' }, codes: ['define-currency'] },
  { says: 'a currency withdrawn', extension: { currency: 'DEM' }, codes: ['define-currency'] },
];

function define(symbol: string, definition: string): UnitExtension {
  return { units: [{ symbol, definition }] };
}
