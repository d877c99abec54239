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

/** Signs on both sides, as tall as a fraction or a table between them; a subscript or a root does not stretch them. */
export function fenced(open: string, inner: string, close: string): string {
  const stretch = /<m(frac|table)/.test(inner) ? '' : 'stretchy="false"';
  return row(operator(open, `form="prefix" ${stretch}`), inner, operator(close, `form="postfix" ${stretch}`));
}

/** Parentheses around markup. */
export function parenthesised(inner: string): string {
  return fenced('(', inner, ')');
}

/** A whole formula. */
export function math(inner: string): string {
  return element('math', inner, 'displaystyle="true"');
}
