// A table of data: the kinds of quantity that have a name, and the units they are written in.

/**
 * One kind of quantity: its name with an article, its dimension (an angle is plain with a mark), the unit a blank
 * unit column takes in either system, further units to suggest, and the unit prices and rates are quoted per.
 */
export interface QuantityRow {
  readonly name: string;
  readonly dimension: string;
  readonly angle?: true;
  readonly SI: string;
  readonly US: string;
  readonly also?: readonly string[];
  readonly per?: { readonly SI: string; readonly US: string };
}

/** The kinds of quantity, one dimension a row. */
export const QUANTITY_TABLE: readonly QuantityRow[] = [
  { name: 'a plain number', dimension: '', SI: '', US: '', also: ['%', 'ea', 'ls'] },
  { name: 'an angle', dimension: '', angle: true, SI: 'deg', US: 'deg', also: ['rad'] },
  {
    name: 'a length',
    dimension: 'L',
    SI: 'm',
    US: 'ft',
    also: ['mm', 'in', 'cm', 'km', 'yd', 'mi'],
    per: { SI: 'm', US: 'lf' },
  },
  {
    name: 'an area',
    dimension: 'L^2',
    SI: 'm^2',
    US: 'ft^2',
    also: ['mm^2', 'cm^2', 'in^2', 'sy', 'ac', 'ha'],
    per: { SI: 'm^2', US: 'sf' },
  },
  {
    name: 'a volume or section modulus',
    dimension: 'L^3',
    SI: 'm^3',
    US: 'ft^3',
    also: ['cy', 'mm^3', 'cm^3', 'in^3', 'L', 'gal'],
    per: { SI: 'm^3', US: 'cy' },
  },
  {
    name: 'a second moment of area',
    dimension: 'L^4',
    SI: 'mm^4',
    US: 'in^4',
    also: ['cm^4', 'm^4', 'ft^4'],
  },
  { name: 'a curvature', dimension: 'L^-1', SI: '1/m', US: '1/ft', also: ['1/mm', '1/in'] },
  {
    name: 'a time',
    dimension: 'T',
    SI: 's',
    US: 's',
    also: ['min', 'h', 'd', 'wk'],
    per: { SI: 'h', US: 'h' },
  },
  { name: 'a frequency', dimension: 'T^-1', SI: '1/s', US: '1/s', also: ['1/min', '1/h', '1/d'] },
  {
    name: 'a speed',
    dimension: 'L T^-1',
    SI: 'm/s',
    US: 'ft/s',
    also: ['kn', 'km/h', 'mph', 'ft/min', 'mm/s'],
  },
  { name: 'an acceleration', dimension: 'L T^-2', SI: 'm/s^2', US: 'ft/s^2' },
  { name: 'an area over time', dimension: 'L^2 T^-1', SI: 'm^2/s', US: 'ft^2/s', also: ['m^2/h', 'sf/h'] },
  {
    name: 'a rate of volume',
    dimension: 'L^3 T^-1',
    SI: 'm^3/h',
    US: 'cy/h',
    also: ['m^3/s', 'ft^3/s', 'L/s', 'gal/min', 'm^3/d', 'cy/d'],
  },
  {
    name: 'a mass',
    dimension: 'M',
    SI: 'kg',
    US: 'lbm',
    also: ['t', 'ST', 'LT', 'slug'],
    per: { SI: 't', US: 'ST' },
  },
  { name: 'a mass per length', dimension: 'L^-1 M', SI: 'kg/m', US: 'lbm/ft' },
  { name: 'a mass per area', dimension: 'L^-2 M', SI: 'kg/m^2', US: 'lbm/ft^2' },
  {
    name: 'a density',
    dimension: 'L^-3 M',
    SI: 'kg/m^3',
    US: 'lbm/ft^3',
    also: ['t/m^3', 'ST/cy', 'slug/ft^3'],
  },
  {
    name: 'a rate of mass',
    dimension: 'M T^-1',
    SI: 't/h',
    US: 'ST/h',
    also: ['kg/s', 'kg/h', 'lbm/h', 't/d', 'ST/d'],
  },
  {
    name: 'a force',
    dimension: 'L M T^-2',
    SI: 'kN',
    US: 'kip',
    also: ['N', 'MN', 'lbf', 'tf', 'STf', 'LTf', 'kgf'],
    per: { SI: 'kN', US: 'kip' },
  },
  {
    name: 'a force per length',
    dimension: 'M T^-2',
    SI: 'kN/m',
    US: 'kip/ft',
    also: ['N/m', 'N/mm', 'kN/mm', 'lbf/ft', 'plf', 'klf', 'kip/in', 'lbf/in'],
  },
  {
    name: 'a pressure or stress',
    dimension: 'L^-1 M T^-2',
    SI: 'kPa',
    US: 'psi',
    also: ['Pa', 'MPa', 'GPa', 'kN/m^2', 'N/mm^2', 'bar', 'ksi', 'psf', 'ksf'],
  },
  {
    name: 'a force per volume',
    dimension: 'L^-2 M T^-2',
    SI: 'kN/m^3',
    US: 'pcf',
    also: ['N/m^3', 'MN/m^3', 'pci', 'kcf'],
  },
  {
    name: 'a moment or energy',
    dimension: 'L^2 M T^-2',
    SI: 'kN·m',
    US: 'kip·ft',
    also: ['N·m', 'MN·m', 'lbf·ft', 'kip·in', 'lbf·in', 'J', 'kJ'],
  },
  {
    name: 'a flexural stiffness',
    dimension: 'L^3 M T^-2',
    SI: 'kN·m^2',
    US: 'kip·ft^2',
    also: ['MN·m^2', 'kip·in^2'],
  },
  { name: 'a power', dimension: 'L^2 M T^-3', SI: 'kW', US: 'hp', also: ['W', 'ft·lbf/s'] },
  { name: 'a temperature difference', dimension: 'Θ', SI: 'K', US: 'ΔdegF', also: ['ΔdegC', 'degC', 'degF'] },
  {
    name: 'a coefficient of thermal expansion',
    dimension: 'Θ^-1',
    SI: '1/K',
    US: '1/degF',
    also: ['1/degC'],
  },
];

/** The row of a dimension, by its key; an angle is under `angle`. */
export const QUANTITY_BY_KEY: ReadonlyMap<string, QuantityRow> = new Map(
  QUANTITY_TABLE.map((row) => [row.angle ? 'angle' : row.dimension, row]),
);
