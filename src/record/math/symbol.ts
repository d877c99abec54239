import { element, operator, row, upright, variable } from './markup.ts';

/**
 * A name as mathematics sets it: the letters slanted, what follows `_` as an upright subscript (further `_` as
 * commas in it), `'` as a prime. `f'_c`, `C_M`, `γ_w`; a sheet or table in front stays upright: `layers.top`.
 */
export function symbolMath(name: string): string {
  const parts = name.split('.');
  const last = parts.pop() ?? '';
  const path = parts.flatMap((part) => [upright(part), operator('.', 'class="path"')]);
  return path.length === 0 ? localSymbol(last) : row(...path, localSymbol(last));
}

function localSymbol(name: string): string {
  const [head = '', ...below] = name.split('_');
  const letters = head.replaceAll("'", '');
  const primes = '′'.repeat(head.length - letters.length);
  const base = variable(letters);
  const subscript = below
    .filter((part) => part !== '')
    .map((part) => part.replaceAll("'", '′'))
    .join(', ');
  if (subscript === '') return primes === '' ? base : element('msup', base + operator(primes));
  if (primes === '') return element('msub', base + upright(subscript));
  return element('msubsup', base + upright(subscript) + operator(primes));
}

/** A unit as it is set in print: powers raised, products with a dot. */
export function unitText(unit: string): string {
  const raised: Readonly<Record<string, string>> = {
    '-': '⁻',
    '0': '⁰',
    '1': '¹',
    '2': '²',
    '3': '³',
    '4': '⁴',
    '5': '⁵',
    '6': '⁶',
  };
  return unit
    .replace(/\^\(?(-?\d)\)?/g, (_, power: string) =>
      [...power].map((digit) => raised[digit] ?? digit).join(''),
    )
    .replaceAll('*', '·')
    .replace(/(?<=[A-Za-z²³])-(?=[A-Za-z])/g, '·');
}
