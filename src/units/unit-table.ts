// A table of data: every unit the program knows, one row each.
import type { PointKind } from './unit.ts';

/** Who reads and writes in a unit at home. */
export type UnitSystem = 'SI' | 'US' | 'both';

/**
 * One unit: SI = x · factor + offset. `aliases` are other spellings of the same thing. `counterpart` of a mass
 * is the force it weighs in standard gravity, and the reverse. `point`: a number in the unit alone is a point.
 */
export interface UnitRow {
  readonly symbol: string;
  readonly aliases?: readonly string[];
  readonly name: string;
  readonly dimension: string;
  readonly factor: number;
  readonly offset?: number;
  readonly angle?: true;
  readonly point?: PointKind;
  readonly system: UnitSystem;
  readonly counterpart?: string;
  readonly source: string;
}

const B8 = 'NIST SP 811 (2008), App. B.8';
const SI = 'SI Brochure, 9th edition';
const NAME = 'the definition of the name';

// Exact by definition (NIST SP 811, 2008, App. B.6 and B.8). What the table makes of them stays exact as a ratio.
const INCH = 0.0254;
const FOOT = 0.3048;
const YARD = 0.9144;
const MILE = 1609.344;
const NAUTICAL_MILE = 1852;
const POUND = 0.45359237;
const GRAVITY = 9.80665;
const POUND_FORCE = 4.4482216152605;
const KIP = 4448.2216152605;
const ACRE = 4046.8564224;
const GALLON = 0.003785411784;

const LENGTH = 'L';
const AREA = 'L^2';
const VOLUME = 'L^3';
const SPEED = 'L T^-1';
const FORCE = 'L M T^-2';
const LINE_LOAD = 'M T^-2';
const PRESSURE = 'L^-1 M T^-2';
const UNIT_WEIGHT = 'L^-2 M T^-2';
const ENERGY = 'L^2 M T^-2';
const POWER = 'L^2 M T^-3';

/** The units of the registry. Currencies come from `currency-table.ts`. */
export const UNIT_TABLE: readonly UnitRow[] = [
  // Length
  { symbol: 'm', name: 'metre', dimension: LENGTH, factor: 1, system: 'SI', source: SI },
  { symbol: 'mm', name: 'millimetre', dimension: LENGTH, factor: 1e-3, system: 'SI', source: SI },
  { symbol: 'cm', name: 'centimetre', dimension: LENGTH, factor: 1e-2, system: 'SI', source: SI },
  { symbol: 'km', name: 'kilometre', dimension: LENGTH, factor: 1000, system: 'SI', source: SI },
  { symbol: 'in', aliases: ['in.'], name: 'inch', dimension: LENGTH, factor: INCH, system: 'US', source: B8 },
  { symbol: 'ft', aliases: ['ft.'], name: 'foot', dimension: LENGTH, factor: FOOT, system: 'US', source: B8 },
  { symbol: 'lf', name: 'linear foot', dimension: LENGTH, factor: FOOT, system: 'US', source: NAME },
  { symbol: 'yd', name: 'yard', dimension: LENGTH, factor: YARD, system: 'US', source: B8 },
  { symbol: 'mi', name: 'mile', dimension: LENGTH, factor: MILE, system: 'US', source: B8 },
  {
    symbol: 'nmi',
    name: 'nautical mile',
    dimension: LENGTH,
    factor: NAUTICAL_MILE,
    system: 'both',
    source: B8,
  },

  // Area
  { symbol: 'sf', name: 'square foot', dimension: AREA, factor: FOOT * FOOT, system: 'US', source: B8 },
  { symbol: 'sy', name: 'square yard', dimension: AREA, factor: YARD * YARD, system: 'US', source: B8 },
  {
    symbol: 'ac',
    name: 'acre (international, 43 560 square feet)',
    dimension: AREA,
    factor: ACRE,
    system: 'US',
    source:
      '43 560 ft² of the international foot; NIST SP 811 App. B.8 gives the survey acre, 4 parts in 10^6 larger',
  },
  { symbol: 'ha', name: 'hectare', dimension: AREA, factor: 1e4, system: 'SI', source: SI },

  // Volume
  { symbol: 'cf', name: 'cubic foot', dimension: VOLUME, factor: 0.028316846592, system: 'US', source: B8 },
  { symbol: 'cy', name: 'cubic yard', dimension: VOLUME, factor: 0.764554857984, system: 'US', source: B8 },
  {
    symbol: 'gal',
    name: 'US gallon (231 cubic inches)',
    dimension: VOLUME,
    factor: GALLON,
    system: 'US',
    source: B8,
  },
  { symbol: 'L', name: 'litre', dimension: VOLUME, factor: 1e-3, system: 'SI', source: SI },

  // Time
  { symbol: 's', name: 'second', dimension: 'T', factor: 1, system: 'both', source: SI },
  { symbol: 'min', name: 'minute', dimension: 'T', factor: 60, system: 'both', source: SI },
  {
    symbol: 'h',
    aliases: ['hr', 'hrs'],
    name: 'hour',
    dimension: 'T',
    factor: 3600,
    system: 'both',
    source: SI,
  },
  { symbol: 'd', name: 'day of 24 hours', dimension: 'T', factor: 86_400, system: 'both', source: SI },
  { symbol: 'wk', name: 'week of 7 days', dimension: 'T', factor: 604_800, system: 'both', source: NAME },

  // Speed
  { symbol: 'kn', name: 'knot', dimension: SPEED, factor: NAUTICAL_MILE / 3600, system: 'both', source: B8 },
  { symbol: 'mph', name: 'mile per hour', dimension: SPEED, factor: 0.44704, system: 'US', source: B8 },

  // Mass
  { symbol: 'kg', name: 'kilogram', dimension: 'M', factor: 1, system: 'SI', counterpart: 'kgf', source: SI },
  { symbol: 't', name: 'tonne', dimension: 'M', factor: 1000, system: 'SI', counterpart: 'tf', source: SI },
  {
    symbol: 'lbm',
    name: 'pound (mass)',
    dimension: 'M',
    factor: POUND,
    system: 'US',
    counterpart: 'lbf',
    source: B8,
  },
  { symbol: 'slug', name: 'slug', dimension: 'M', factor: POUND_FORCE / FOOT, system: 'US', source: B8 },
  {
    symbol: 'ST',
    name: 'short ton (2000 lbm)',
    dimension: 'M',
    factor: 907.18474,
    system: 'US',
    counterpart: 'STf',
    source: B8,
  },
  {
    symbol: 'LT',
    name: 'long ton (2240 lbm)',
    dimension: 'M',
    factor: 1016.0469088,
    system: 'US',
    counterpart: 'LTf',
    source: B8,
  },

  // Force
  { symbol: 'N', name: 'newton', dimension: FORCE, factor: 1, system: 'SI', source: SI },
  { symbol: 'kN', name: 'kilonewton', dimension: FORCE, factor: 1000, system: 'SI', source: SI },
  { symbol: 'MN', name: 'meganewton', dimension: FORCE, factor: 1e6, system: 'SI', source: SI },
  {
    symbol: 'kgf',
    name: 'kilogram-force',
    dimension: FORCE,
    factor: GRAVITY,
    system: 'SI',
    counterpart: 'kg',
    source: B8,
  },
  {
    symbol: 'tf',
    name: 'tonne-force',
    dimension: FORCE,
    factor: 9806.65,
    system: 'SI',
    counterpart: 't',
    source: '1000 kgf; NIST SP 811 (2008), App. B.8',
  },
  {
    symbol: 'lbf',
    name: 'pound-force',
    dimension: FORCE,
    factor: POUND_FORCE,
    system: 'US',
    counterpart: 'lbm',
    source: B8,
  },
  {
    symbol: 'kip',
    aliases: ['kips'],
    name: 'kip (1000 lbf)',
    dimension: FORCE,
    factor: KIP,
    system: 'US',
    source: B8,
  },
  {
    symbol: 'STf',
    name: 'short ton-force (2000 lbf)',
    dimension: FORCE,
    factor: 8896.443230521,
    system: 'US',
    counterpart: 'ST',
    source: B8,
  },
  {
    symbol: 'LTf',
    name: 'long ton-force (2240 lbf)',
    dimension: FORCE,
    factor: 9964.01641818352,
    system: 'US',
    counterpart: 'LT',
    source: '2240 lbf; the pound-force of NIST SP 811 (2008), App. B.8',
  },

  // Line load
  {
    symbol: 'plf',
    name: 'pound-force per foot',
    dimension: LINE_LOAD,
    factor: POUND_FORCE / FOOT,
    system: 'US',
    source: B8,
  },
  { symbol: 'klf', name: 'kip per foot', dimension: LINE_LOAD, factor: KIP / FOOT, system: 'US', source: B8 },

  // Pressure
  { symbol: 'Pa', name: 'pascal', dimension: PRESSURE, factor: 1, system: 'SI', source: SI },
  { symbol: 'kPa', name: 'kilopascal', dimension: PRESSURE, factor: 1000, system: 'SI', source: SI },
  { symbol: 'MPa', name: 'megapascal', dimension: PRESSURE, factor: 1e6, system: 'SI', source: SI },
  { symbol: 'GPa', name: 'gigapascal', dimension: PRESSURE, factor: 1e9, system: 'SI', source: SI },
  { symbol: 'bar', name: 'bar', dimension: PRESSURE, factor: 1e5, system: 'SI', source: B8 },
  {
    symbol: 'psi',
    name: 'pound-force per square inch',
    dimension: PRESSURE,
    factor: POUND_FORCE / (INCH * INCH),
    system: 'US',
    source: B8,
  },
  {
    symbol: 'ksi',
    name: 'kip per square inch',
    dimension: PRESSURE,
    factor: KIP / (INCH * INCH),
    system: 'US',
    source: B8,
  },
  {
    symbol: 'psf',
    name: 'pound-force per square foot',
    dimension: PRESSURE,
    factor: POUND_FORCE / (FOOT * FOOT),
    system: 'US',
    source: B8,
  },
  {
    symbol: 'ksf',
    name: 'kip per square foot',
    dimension: PRESSURE,
    factor: KIP / (FOOT * FOOT),
    system: 'US',
    source: '1000 psf; NIST SP 811 (2008), App. B.8',
  },

  // Unit weight
  {
    symbol: 'pcf',
    name: 'pound-force per cubic foot',
    dimension: UNIT_WEIGHT,
    factor: POUND_FORCE / 0.028316846592,
    system: 'US',
    counterpart: 'lbm/ft^3',
    source: 'lbf/ft³ of NIST SP 811 (2008), App. B.8',
  },
  {
    symbol: 'pci',
    name: 'pound-force per cubic inch',
    dimension: UNIT_WEIGHT,
    factor: POUND_FORCE / 1.6387064e-5,
    system: 'US',
    counterpart: 'lbm/in^3',
    source: 'lbf/in³ of NIST SP 811 (2008), App. B.8',
  },
  {
    symbol: 'kcf',
    name: 'kip per cubic foot',
    dimension: UNIT_WEIGHT,
    factor: KIP / 0.028316846592,
    system: 'US',
    source: '1000 lbf/ft³ of NIST SP 811 (2008), App. B.8',
  },

  // Energy and power
  { symbol: 'J', name: 'joule', dimension: ENERGY, factor: 1, system: 'SI', source: SI },
  { symbol: 'kJ', name: 'kilojoule', dimension: ENERGY, factor: 1000, system: 'SI', source: SI },
  { symbol: 'W', name: 'watt', dimension: POWER, factor: 1, system: 'SI', source: SI },
  { symbol: 'kW', name: 'kilowatt', dimension: POWER, factor: 1000, system: 'SI', source: SI },
  {
    symbol: 'hp',
    name: 'horsepower (550 ft·lbf/s)',
    dimension: POWER,
    factor: 550 * FOOT * POUND_FORCE,
    system: 'US',
    source: B8,
  },

  // Angle
  { symbol: 'rad', name: 'radian', dimension: '', factor: 1, angle: true, system: 'both', source: SI },
  {
    symbol: 'deg',
    aliases: ['°'],
    name: 'degree of angle',
    dimension: '',
    factor: Math.PI / 180,
    angle: true,
    system: 'both',
    source: B8,
  },

  // Temperature
  { symbol: 'K', name: 'kelvin (a difference)', dimension: 'Θ', factor: 1, system: 'both', source: SI },
  {
    symbol: 'degC',
    aliases: ['°C', '℃'],
    name: 'degree Celsius (alone a temperature, in a compound a difference)',
    dimension: 'Θ',
    factor: 1,
    offset: 273.15,
    point: 'temperature',
    system: 'SI',
    source: B8,
  },
  {
    symbol: 'degF',
    aliases: ['°F', '℉'],
    name: 'degree Fahrenheit (alone a temperature, in a compound a difference)',
    dimension: 'Θ',
    factor: 5 / 9,
    offset: (459.67 * 5) / 9,
    point: 'temperature',
    system: 'US',
    source: B8,
  },
  {
    symbol: 'ΔdegC',
    aliases: ['Δ°C'],
    name: 'difference of degrees Celsius',
    dimension: 'Θ',
    factor: 1,
    system: 'SI',
    source: B8,
  },
  {
    symbol: 'ΔdegF',
    aliases: ['Δ°F'],
    name: 'difference of degrees Fahrenheit',
    dimension: 'Θ',
    factor: 5 / 9,
    system: 'US',
    source: B8,
  },

  // Plain
  { symbol: '%', name: 'per cent', dimension: '', factor: 0.01, system: 'both', source: NAME },
  { symbol: '‰', name: 'per mille', dimension: '', factor: 0.001, system: 'both', source: NAME },
  { symbol: 'ea', name: 'each', dimension: '', factor: 1, system: 'both', source: NAME },
  { symbol: 'ls', name: 'lump sum', dimension: '', factor: 1, system: 'both', source: NAME },
];
