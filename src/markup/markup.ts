const written = Symbol('markup');

/**
 * A piece of SVG or MathML. Only `element` and `together` make one, and what they are given as text they escape: a text,
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

/** The elements there are: none that runs, loads, links or asks. */
export type ElementName = SvgName | MathName;

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
  | 'displaystyle';

/** Attributes of an element; what is undefined is left out. */
export type Attributes = Readonly<Partial<Record<AttributeName, string | number | undefined>>>;

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
  const list = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${escapeText(String(value))}"`)
    .join('');
  const inside = writeContent(content);
  return { [written]: inside === '' ? `<${name}${list}/>` : `<${name}${list}>${inside}</${name}>` };
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
