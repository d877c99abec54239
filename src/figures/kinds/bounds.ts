import { type Problem, problem } from '../../diagnostics/index.ts';
import { type Amount, amountText } from '../cells/amount.ts';

/** That an amount cannot be drawn, and what is wanted of it. */
export function outOfBounds(amount: Amount, wanted: string): Problem {
  const facts = { name: amount.id, value: amountText(amount), wanted };
  return problem('figure-out-of-bounds', { from: 0, to: 0 }, facts);
}

/** The problems of amounts that should be above zero. */
export function notAboveZero(...amounts: readonly (Amount | undefined)[]): readonly Problem[] {
  return amounts.flatMap((amount) =>
    amount && !(amount.si > 0) ? [outOfBounds(amount, 'it has to be above zero')] : [],
  );
}

/** Amounts as the rows of a table: label, symbol, value. */
export function amountRows(...amounts: readonly (Amount | undefined)[]): readonly (readonly string[])[] {
  return amounts.flatMap((amount) =>
    amount ? [[amount.label === '' ? amount.name : amount.label, amount.name, amountText(amount)]] : [],
  );
}

/** The heads of the table that {@link amountRows} fills. */
export const AMOUNT_HEAD: readonly string[] = ['what', 'symbol', 'value'];

/** Amounts in one sentence: `beam B = 41.8 m; approach angle α = 6°.` */
export function amountSentence(...amounts: readonly (Amount | undefined)[]): string {
  const said = amounts.flatMap((amount) =>
    amount ? [`${amount.label} ${amount.name} = ${amountText(amount)}`.trim()] : [],
  );
  return said.length === 0 ? '' : `${said.join('; ')}.`;
}
