const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text safe inside an element or a quoted attribute. */
function escapeText(text: string): string {
  return text.replace(/[&<>"]/g, (found) => escapes[found] ?? found);
}

/** An element of MathML around markup. */
export function element(name: string, inner: string, attributes = ''): string {
  return `<${name}${attributes === '' ? '' : ` ${attributes}`}>${inner}</${name}>`;
}

export const row = (...parts: readonly string[]): string => element('mrow', parts.join(''));
export const operator = (sign: string, attributes = ''): string =>
  element('mo', escapeText(sign), attributes);
/** Words set upright: function names, texts, units. */
export const words = (text: string): string => element('mtext', escapeText(text));
export const numeral = (text: string): string => element('mn', escapeText(text));
export const variable = (text: string): string => element('mi', escapeText(text), 'class="v"');
export const upright = (text: string): string => element('mi', escapeText(text), 'class="u"');

/** Parentheses as tall as what they hold. */
export function parenthesised(inner: string): string {
  return row(operator('('), inner, operator(')'));
}

/** A whole formula. */
export function math(inner: string): string {
  return element('math', inner, 'displaystyle="true"');
}
