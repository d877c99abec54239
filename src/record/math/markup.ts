import { type Content, element, type Markup, writeMarkup } from '../../markup/index.ts';

/** Pieces side by side, as one. */
export const row = (...parts: readonly Content[]): Markup => element('mrow', {}, parts);
export const operator = (sign: string, attributes: Parameters<typeof element>[1] = {}): Markup =>
  element('mo', attributes, sign);
/** Words set upright: function names, texts, units. */
export const words = (text: string): Markup => element('mtext', {}, text);
export const numeral = (text: string): Markup => element('mn', {}, text);
export const variable = (text: string): Markup => element('mi', { class: 'v' }, text);
export const upright = (text: string): Markup => element('mi', { class: 'u' }, text);
export const power = (base: Markup, raised: Markup): Markup => element('msup', {}, base, raised);

/** A sign that keeps its height, whatever stands beside it. */
export const levelSign = (sign: string, form: 'prefix' | 'infix' | 'postfix'): Markup =>
  operator(sign, { form, stretchy: 'false', class: sign === ';' ? 'separator' : undefined });

/** Signs on both sides, as tall as a fraction or a table between them; a subscript or a root does not stretch them. */
export function encloseMarkup(open: string, inner: Markup, close: string): Markup {
  const stretchy = /<m(frac|table)/.test(writeMarkup(inner)) ? undefined : 'false';
  return row(
    operator(open, { form: 'prefix', stretchy }),
    inner,
    operator(close, { form: 'postfix', stretchy }),
  );
}

/** Parentheses around markup. */
export function parenthesise(inner: Markup): Markup {
  return encloseMarkup('(', inner, ')');
}

/** A whole formula. */
export function math(...inner: readonly Markup[]): Markup {
  return element('math', { displaystyle: 'true' }, inner);
}
