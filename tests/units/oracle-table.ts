// A table of data: our units in the notations of two independent libraries.

/**
 * One unit as UCUM code and as mathjs expression, both with the SI unit to convert to. A unit neither library has by
 * name is compared as a compound. `mathjsTolerance` where mathjs is known to be less exact, with the reason.
 */
export interface OracleRow {
  readonly unit: string;
  readonly ucum?: readonly [code: string, si: string];
  readonly mathjs?: readonly [expression: string, si: string];
  readonly mathjsTolerance?: { readonly relative: number; readonly reason: string };
}

const KIP = { relative: 4e-9, reason: 'mathjs has 4448.2216 N for the kip, cut after eight digits' };
const ACRE = { relative: 1e-6, reason: 'mathjs has 4046.86 m² for the acre, cut after six digits' };
const HP = { relative: 1e-9, reason: 'mathjs has 745.6998715386 W, the exact value is 745.69987158227022' };

export const ORACLE_TABLE: readonly OracleRow[] = [
  { unit: 'mm', ucum: ['mm', 'm'], mathjs: ['mm', 'm'] },
  { unit: 'cm', ucum: ['cm', 'm'], mathjs: ['cm', 'm'] },
  { unit: 'km', ucum: ['km', 'm'], mathjs: ['km', 'm'] },
  { unit: 'in', ucum: ['[in_i]', 'm'], mathjs: ['inch', 'm'] },
  { unit: 'ft', ucum: ['[ft_i]', 'm'], mathjs: ['ft', 'm'] },
  { unit: 'lf', ucum: ['[ft_i]', 'm'], mathjs: ['ft', 'm'] },
  { unit: 'yd', ucum: ['[yd_i]', 'm'], mathjs: ['yd', 'm'] },
  { unit: 'mi', ucum: ['[mi_i]', 'm'], mathjs: ['mi', 'm'] },
  { unit: 'nmi', ucum: ['[nmi_i]', 'm'] },
  { unit: 'sf', ucum: ['[sft_i]', 'm2'], mathjs: ['sqft', 'm^2'] },
  { unit: 'sy', ucum: ['[syd_i]', 'm2'], mathjs: ['sqyd', 'm^2'] },
  { unit: 'in^2', ucum: ['[sin_i]', 'm2'], mathjs: ['sqin', 'm^2'] },
  { unit: 'ac', mathjs: ['acre', 'm^2'], mathjsTolerance: ACRE },
  { unit: 'ha', ucum: ['har', 'm2'], mathjs: ['hectare', 'm^2'] },
  { unit: 'cf', ucum: ['[cft_i]', 'm3'], mathjs: ['ft^3', 'm^3'] },
  { unit: 'cy', ucum: ['[cyd_i]', 'm3'], mathjs: ['yd^3', 'm^3'] },
  { unit: 'in^3', ucum: ['[cin_i]', 'm3'], mathjs: ['inch^3', 'm^3'] },
  { unit: 'gal', ucum: ['[gal_us]', 'm3'], mathjs: ['231 inch^3', 'm^3'] },
  { unit: 'L', ucum: ['L', 'm3'], mathjs: ['L', 'm^3'] },
  { unit: 'in^4', ucum: ['[in_i]4', 'm4'], mathjs: ['inch^4', 'm^4'] },
  { unit: 'min', ucum: ['min', 's'], mathjs: ['minute', 's'] },
  { unit: 'h', ucum: ['h', 's'], mathjs: ['hour', 's'] },
  { unit: 'd', ucum: ['d', 's'], mathjs: ['day', 's'] },
  { unit: 'wk', ucum: ['wk', 's'], mathjs: ['week', 's'] },
  { unit: 'kn', ucum: ['[kn_i]', 'm/s'] },
  { unit: 'mph', ucum: ['[mi_i]/h', 'm/s'], mathjs: ['mi/hour', 'm/s'] },
  { unit: 't', ucum: ['t', 'kg'], mathjs: ['tonne', 'kg'] },
  { unit: 'lbm', ucum: ['[lb_av]', 'kg'], mathjs: ['lbm', 'kg'] },
  { unit: 'ST', ucum: ['[ston_av]', 'kg'], mathjs: ['ton', 'kg'] },
  { unit: 'LT', ucum: ['[lton_av]', 'kg'], mathjs: ['2240 lbm', 'kg'] },
  { unit: 'slug', ucum: ['[lbf_av].s2/[ft_i]', 'kg'], mathjs: ['lbf s^2/ft', 'kg'] },
  { unit: 'lbm/ft^3', ucum: ['[lb_av]/[cft_i]', 'kg/m3'], mathjs: ['lbm/ft^3', 'kg/m^3'] },
  { unit: 'kN', ucum: ['kN', 'N'], mathjs: ['kN', 'N'] },
  { unit: 'MN', ucum: ['MN', 'N'], mathjs: ['MN', 'N'] },
  { unit: 'kgf', ucum: ['kgf', 'N'], mathjs: ['kgf', 'N'] },
  { unit: 'tf', ucum: ['1000.kgf', 'N'], mathjs: ['1000 kgf', 'N'] },
  { unit: 'lbf', ucum: ['[lbf_av]', 'N'], mathjs: ['lbf', 'N'] },
  { unit: 'kip', ucum: ['k[lbf_av]', 'N'], mathjs: ['kip', 'N'], mathjsTolerance: KIP },
  { unit: 'STf', ucum: ['2000.[lbf_av]', 'N'], mathjs: ['2000 lbf', 'N'] },
  { unit: 'LTf', ucum: ['2240.[lbf_av]', 'N'], mathjs: ['2240 lbf', 'N'] },
  { unit: 'plf', ucum: ['[lbf_av]/[ft_i]', 'N/m'], mathjs: ['lbf/ft', 'N/m'] },
  { unit: 'klf', ucum: ['k[lbf_av]/[ft_i]', 'N/m'], mathjs: ['1000 lbf/ft', 'N/m'] },
  { unit: 'kPa', ucum: ['kPa', 'Pa'], mathjs: ['kPa', 'Pa'] },
  { unit: 'MPa', ucum: ['MPa', 'Pa'], mathjs: ['MPa', 'Pa'] },
  { unit: 'GPa', ucum: ['GPa', 'Pa'], mathjs: ['GPa', 'Pa'] },
  { unit: 'bar', ucum: ['bar', 'Pa'], mathjs: ['bar', 'Pa'] },
  { unit: 'psi', ucum: ['[psi]', 'Pa'], mathjs: ['lbf/inch^2', 'Pa'] },
  { unit: 'ksi', ucum: ['k[lbf_av]/[sin_i]', 'Pa'], mathjs: ['1000 lbf/inch^2', 'Pa'] },
  { unit: 'psf', ucum: ['[lbf_av]/[sft_i]', 'Pa'], mathjs: ['lbf/ft^2', 'Pa'] },
  { unit: 'ksf', ucum: ['k[lbf_av]/[sft_i]', 'Pa'], mathjs: ['1000 lbf/ft^2', 'Pa'] },
  { unit: 'pcf', ucum: ['[lbf_av]/[cft_i]', 'N/m3'], mathjs: ['lbf/ft^3', 'N/m^3'] },
  { unit: 'pci', ucum: ['[lbf_av]/[cin_i]', 'N/m3'], mathjs: ['lbf/inch^3', 'N/m^3'] },
  { unit: 'kcf', ucum: ['k[lbf_av]/[cft_i]', 'N/m3'], mathjs: ['1000 lbf/ft^3', 'N/m^3'] },
  { unit: 'kJ', ucum: ['kJ', 'J'], mathjs: ['kJ', 'J'] },
  { unit: 'kW', ucum: ['kW', 'W'], mathjs: ['kW', 'W'] },
  { unit: 'hp', ucum: ['[HP]', 'W'], mathjs: ['hp', 'W'], mathjsTolerance: HP },
  { unit: 'kip·ft', ucum: ['k[lbf_av].[ft_i]', 'N.m'], mathjs: ['1000 lbf ft', 'N m'] },
  { unit: 'kip·ft^2', ucum: ['k[lbf_av].[ft_i]2', 'N.m2'], mathjs: ['1000 lbf ft^2', 'N m^2'] },
  { unit: 'lbf·in', ucum: ['[lbf_av].[in_i]', 'N.m'], mathjs: ['lbf inch', 'N m'] },
  { unit: 'deg', ucum: ['deg', 'rad'], mathjs: ['deg', 'rad'] },
  { unit: '%', ucum: ['%', '1'] },
  { unit: '‰', ucum: ['[ppth]', '1'] },
  { unit: 'kJ/(m^2·s)', ucum: ['kJ/(m2.s)', 'W/m2'], mathjs: ['kJ/(m^2 s)', 'W/m^2'] },
  { unit: 'gal/min', ucum: ['[gal_us]/min', 'm3/s'], mathjs: ['231 inch^3/minute', 'm^3/s'] },
];
