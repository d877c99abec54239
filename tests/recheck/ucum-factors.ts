// A table: every symbol of the unit registry in the codes of UCUM, and what an independent library makes of them.
import { UcumLhcUtils } from '@lhncbc/ucum-lhc';

/** [symbols that mean the same, UCUM code, UCUM code of the coherent SI unit]. */
const codes: readonly (readonly [symbols: string, code: string, si: string])[] = [
  ['m', 'm', 'm'],
  ['mm', 'mm', 'm'],
  ['cm', 'cm', 'm'],
  ['km', 'km', 'm'],
  ['in in.', '[in_i]', 'm'],
  ['ft ft. lf', '[ft_i]', 'm'],
  ['yd', '[yd_i]', 'm'],
  ['mi', '[mi_i]', 'm'],
  ['nmi', '[nmi_i]', 'm'],
  ['sf', '[sft_i]', 'm2'],
  ['sy', '[syd_i]', 'm2'],
  // UCUM's own acre is the survey acre.
  ['ac', '43560.[sft_i]', 'm2'],
  ['ha', 'har', 'm2'],
  ['cf', '[cft_i]', 'm3'],
  ['cy', '[cyd_i]', 'm3'],
  ['gal', '[gal_us]', 'm3'],
  ['L', 'L', 'm3'],
  ['s', 's', 's'],
  ['min', 'min', 's'],
  ['h hr hrs', 'h', 's'],
  ['d', 'd', 's'],
  ['wk', 'wk', 's'],
  ['kn', '[kn_i]', 'm/s'],
  ['mph', '[mi_i]/h', 'm/s'],
  ['kg', 'kg', 'kg'],
  ['t', 't', 'kg'],
  ['lbm', '[lb_av]', 'kg'],
  ['slug', '[lbf_av].s2/[ft_i]', 'kg'],
  ['ST', '[ston_av]', 'kg'],
  ['LT', '[lton_av]', 'kg'],
  ['N', 'N', 'N'],
  ['kN', 'kN', 'N'],
  ['MN', 'MN', 'N'],
  ['kgf', 'kgf', 'N'],
  ['tf', 't.[g]', 'N'],
  ['lbf', '[lbf_av]', 'N'],
  ['kip kips', 'k[lbf_av]', 'N'],
  ['STf', '[ston_av].[g]', 'N'],
  ['LTf', '[lton_av].[g]', 'N'],
  ['plf', '[lbf_av]/[ft_i]', 'N/m'],
  ['klf', 'k[lbf_av]/[ft_i]', 'N/m'],
  ['Pa', 'Pa', 'Pa'],
  ['kPa', 'kPa', 'Pa'],
  ['MPa', 'MPa', 'Pa'],
  ['GPa', 'GPa', 'Pa'],
  ['bar', 'bar', 'Pa'],
  ['psi', '[psi]', 'Pa'],
  ['ksi', 'k[lbf_av]/[sin_i]', 'Pa'],
  ['psf', '[lbf_av]/[sft_i]', 'Pa'],
  ['ksf', 'k[lbf_av]/[sft_i]', 'Pa'],
  ['pcf', '[lbf_av]/[cft_i]', 'N/m3'],
  ['pci', '[lbf_av]/[cin_i]', 'N/m3'],
  ['kcf', 'k[lbf_av]/[cft_i]', 'N/m3'],
  ['J', 'J', 'J'],
  ['kJ', 'kJ', 'J'],
  ['W', 'W', 'W'],
  ['kW', 'kW', 'W'],
  ['hp', '[HP]', 'W'],
  ['rad', 'rad', 'rad'],
  ['deg °', 'deg', 'rad'],
  ['K ΔdegC Δ°C', 'K', 'K'],
  ['ΔdegF Δ°F', '5.K/9', 'K'],
  ['degC °C ℃', 'Cel', 'K'],
  ['degF °F ℉', '[degF]', 'K'],
  ['%', '%', '1'],
  ['‰', '[ppth]', '1'],
];

/** Symbols that only count, which no library need be asked about. */
const counted = ['ea', 'ls'];

/** What the library makes of one unit: SI = x · factor + offset. */
interface Converted {
  readonly symbol: string;
  readonly factor: number;
  readonly offset: number;
}

/** Asks UCUM for every symbol. Throws on a code it refuses. */
function factorsFromUcum(): readonly Converted[] {
  const library = UcumLhcUtils.getInstance();
  const convert = (code: string, x: number, si: string): number => {
    const result = library.convertUnitTo(code, x, si);
    if (result.status !== 'succeeded')
      throw new Error(
        `UCUM does not convert ${code} to ${si}: ${(result as { msg?: readonly string[] }).msg?.join(' ')}`,
      );
    return Number(result.toVal);
  };
  const converted = codes.flatMap(([symbols, code, si]) => {
    const offset = tidy(convert(code, 0, si));
    const factor = tidy(offset === 0 ? convert(code, 1, si) : (convert(code, 900, si) - offset) / 900);
    return symbols.split(' ').map((symbol) => ({ symbol, factor, offset }));
  });
  return [...converted, ...counted.map((symbol) => ({ symbol, factor: 1, offset: 0 }))];
}

/**
 * The library multiplies exact decimal factors in floating point and may miss the last of 16 digits: a number that is
 * a decimal of 13 digits to 1e-15 is that decimal.
 */
function tidy(x: number): number {
  const short = Number(x.toPrecision(13));
  return Math.abs(short - x) <= 1e-15 * Math.abs(x) ? short : x;
}

/** The source of `src/recheck/factors.ts`. */
export function factorsSource(): string {
  const rows = factorsFromUcum().map(
    ({ symbol, factor, offset }) => `  ['${symbol}', ${factor}, ${offset}],`,
  );
  return `// A table of data, made by tests/recheck/factors.test.ts from UCUM; \`npx vitest run <that file> -u\` makes it again.

/**
 * Every unit symbol with its factor and offset, SI = x · factor + offset, as UCUM has them (@lhncbc/ucum-lhc): the
 * second engine shares no factor with the first.
 */
export const FACTORS: readonly (readonly [symbol: string, factor: number, offset: number])[] = [
${rows.join('\n')}
];
`;
}
