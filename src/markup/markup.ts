const written = Symbol('markup');

/**
 * A piece of SVG, MathML or HTML. Only `element` and `together` make one, and what they are given as text they escape: a text,
 * wherever it comes from, is never markup, and the types let no text pass for it.
 */
export interface Markup {
  readonly [written]: string;
}

/** What stands in an element: markup, text as it is to be read, or several of either one after another. */
export type Content = Markup | string | readonly Content[];

type SvgName =
  | 'svg'
  | 'title'
  | 'desc'
  | 'defs'
  | 'pattern'
  | 'g'
  | 'line'
  | 'rect'
  | 'circle'
  | 'path'
  | 'text'
  | 'tspan';

type MathName =
  | 'math'
  | 'mrow'
  | 'mi'
  | 'mn'
  | 'mo'
  | 'mtext'
  | 'mspace'
  | 'mfrac'
  | 'msqrt'
  | 'mroot'
  | 'msub'
  | 'msup'
  | 'msubsup'
  | 'mtable'
  | 'mtr'
  | 'mtd';

/** Elements of a page of words: no more than a record is written with. */
const HTML_NAMES = [
  'header',
  'main',
  'nav',
  'section',
  'h1',
  'h2',
  'h3',
  'h4',
  'p',
  'div',
  'span',
  'b',
  'code',
  'a',
  'table',
  'thead',
  'tbody',
  'tr',
  'th',
  'td',
  'ul',
  'ol',
  'li',
  'dl',
  'dt',
  'dd',
] as const;

type HtmlName = (typeof HTML_NAMES)[number];

/** The elements there are: none that runs, loads or asks, and links only lead to places of the same page. */
export type ElementName = SvgName | MathName | HtmlName;

type AttributeName =
  | 'xmlns'
  | 'id'
  | 'class'
  | 'role'
  | `aria-${string}`
  | `data-${string}`
  | 'viewBox'
  | 'fill'
  | 'transform'
  | 'patternUnits'
  | 'patternTransform'
  | 'stroke-width'
  | 'stroke-linejoin'
  | 'text-anchor'
  | 'd'
  | 'x'
  | 'y'
  | 'dx'
  | 'dy'
  | 'x1'
  | 'y1'
  | 'x2'
  | 'y2'
  | 'cx'
  | 'cy'
  | 'r'
  | 'width'
  | 'height'
  | 'form'
  | 'stretchy'
  | 'movablelimits'
  | 'displaystyle'
  | 'alttext'
  | 'scope'
  | 'colspan';

/** Attributes of an element; what is undefined is left out. */
export type Attributes = Readonly<Partial<Record<AttributeName, string | number | undefined>>> & {
  readonly href?: `#${string}`;
};

const signs = new Map([
  ['&', '&amp;'],
  ['<', '&lt;'],
  ['>', '&gt;'],
  ['"', '&quot;'],
  ["'", '&#39;'],
]);

/** Text as markup writes it; characters that XML has no way to write are dropped. */
function escapeText(text: string): string {
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: XML has no way to write them
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
      .replace(/[&<>"']/g, (sign) => signs.get(sign) ?? '')
  );
}

function writeContent(content: Content): string {
  if (typeof content === 'string') return escapeText(content);
  return written in content ? content[written] : content.map(writeContent).join('');
}

/** An element with what stands in it. */
export function element(
  name: ElementName,
  attributes: Attributes = {},
  ...content: readonly Content[]
): Markup {
  return { [written]: writeElement(name, attributes, writeContent(content)) };
}

/** HTML closes an element that is empty only by its end, and one that can hold nothing not at all. */
const endedByTag = new Set<string>([...HTML_NAMES, 'html', 'head', 'title', 'body', 'style', 'script']);

function writeElement(
  name: string,
  attributes: Readonly<Record<string, string | number | undefined>>,
  inside: string,
): string {
  const list = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${escapeText(String(value))}"`)
    .join('');
  return inside === '' && !endedByTag.has(name) ? `<${name}${list}/>` : `<${name}${list}>${inside}</${name}>`;
}

/** Pieces one after another, without an element around them. */
export function together(...content: readonly Content[]): Markup {
  return { [written]: writeContent(content) };
}

/** No markup at all. */
export const none: Markup = together();

/** The text of markup, for a file, or for a page to read. */
export function writeMarkup(markup: Markup): string {
  return markup[written];
}

/** What a whole page is written from. */
export interface PageContent {
  readonly title: string;
  /** Its rules; no sign in them can end the element they stand in. */
  readonly css: string;
  readonly body: Content;
  /** Text of JSON that the page carries and no browser shows or runs, under an id, with attributes of its own. */
  readonly data: {
    readonly id: string;
    readonly json: string;
    readonly attributes: Readonly<Record<`data-${string}`, string>>;
  };
}

/**
 * A whole page of HTML that is well-formed XML too. It needs nothing from elsewhere, and its policy has the browser run and
 * load nothing, whatever stands in it.
 */
export function writePage({ title, css, body, data }: PageContent): string {
  const policy = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";
  const head = [
    writeElement('meta', { charset: 'utf-8' }, ''),
    writeElement('meta', { 'http-equiv': 'Content-Security-Policy', content: policy }, ''),
    writeElement('meta', { name: 'viewport', content: 'width=device-width' }, ''),
    writeElement('title', {}, escapeText(title)),
    writeElement('style', {}, escapeRules(css)),
  ].join('\n');
  const block = { type: 'application/json', id: data.id, ...data.attributes };
  const whole = [
    writeElement('head', {}, `\n${head}\n`),
    writeElement(
      'body',
      {},
      `\n${writeContent(body)}\n${writeElement('script', block, escapeJson(data.json))}\n`,
    ),
  ].join('\n');
  const root = writeElement('html', { lang: 'en', xmlns: 'http://www.w3.org/1999/xhtml' }, `\n${whole}\n`);
  return `<!DOCTYPE html>\n${root}\n`;
}

/** Rules of CSS without a sign that HTML or XML reads: in its strings each has a way to be written by its code. */
function escapeRules(css: string): string {
  return css.replace(/[<&]/g, (sign) => `\\${sign.codePointAt(0)?.toString(16)} `);
}

/** JSON without a sign that HTML or XML reads, or that a copy could change: in its strings each can be written by its code. */
function escapeJson(json: string): string {
  return json.replace(
    /[<>&\u007f-\u00a0\u2028\u2029\ufdd0-\ufdef\ufeff\ufffe\uffff]/g,
    (sign) => `\\u${(sign.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`,
  );
}
