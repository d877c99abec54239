import { element, type Markup } from '../../markup/index.ts';
import { operator, power, row, upright, variable } from './markup.ts';

/**
 * A name as mathematics sets it: the letters slanted, what follows `_` as an upright subscript (further `_` as
 * commas in it), `'` as a prime. `f'_c`, `C_M`, `γ_w`; a sheet or table in front stays upright: `layers.top`.
 */
export function symbolMath(name: string): Markup {
  const parts = name.split('.');
  const last = parts.pop() ?? '';
  // The point within the letters: as an operator it would stand off on both sides, like a product's.
  return parts.length === 0 ? localSymbol(last) : row(upright(`${parts.join('.')}.`), localSymbol(last));
}

function localSymbol(name: string): Markup {
  const [head = '', ...below] = name.split('_');
  const letters = head.replaceAll("'", '');
  const primes = '′'.repeat(head.length - letters.length);
  const base = variable(letters);
  const subscript = below
    .filter((part) => part !== '')
    .map((part) => part.replaceAll("'", '′'))
    .join(', ');
  if (subscript === '') return primes === '' ? base : power(base, operator(primes));
  if (primes === '') return element('msub', {}, base, upright(subscript));
  return element('msubsup', {}, base, upright(subscript), operator(primes));
}
