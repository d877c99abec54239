/** An element of a page as a reader of XML finds it. */
export interface ReadElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  /** The names of the elements around it, the outermost first. */
  readonly within: readonly string[];
}

/** What a strict reader makes of a page: its elements in order, the words of all, and what is no sound XML. */
export interface ReadPage {
  readonly elements: readonly ReadElement[];
  readonly words: string;
  readonly strange: readonly string[];
}

const entities = new Map([
  ['lt', '<'],
  ['gt', '>'],
  ['amp', '&'],
  ['quot', '"'],
  ['#39', "'"],
]);

/** Reads a page as XML: each element ends, attributes are quoted, and every sign that means something is escaped. */
export function readPage(page: string): ReadPage {
  const strange: string[] = [];
  const elements: ReadElement[] = [];
  const open: string[] = [];
  let words = '';
  const [doctype = ''] = /^<!DOCTYPE html>\n/.exec(page) ?? [];
  if (doctype === '') strange.push('it does not begin as HTML does');
  const read = (text: string): string =>
    text.replace(/&([^;\s]*);?/g, (whole, name: string) => {
      const sign = entities.get(name);
      if (sign === undefined || !whole.endsWith(';')) strange.push(whole);
      return sign ?? whole;
    });
  for (const [piece] of page.slice(doctype.length).matchAll(/<[^>]*>|[^<]+|</g)) {
    if (!piece.startsWith('<')) {
      const isRaw = open.at(-1) === 'style' || open.at(-1) === 'script';
      if (!isRaw) words += read(piece);
      if (isRaw ? piece.includes('&') : piece.includes('>')) strange.push(piece.slice(0, 80));
      continue;
    }
    const [, close, name = '', list = '', single] =
      /^<(\/?)([a-z][a-z0-9]*)((?: [\w:-]+="[^"<>]*")*)(\/?)>$/i.exec(piece) ?? [];
    if (name === '') strange.push(piece);
    else if (close === '/') {
      if (open.pop() !== name) strange.push(piece);
    } else {
      const attributes = new Map(
        [...list.matchAll(/ ([\w:-]+)="([^"]*)"/g)].map(([, key = '', value = '']) => [key, read(value)]),
      );
      elements.push({ name, attributes, within: [...open] });
      if (single !== '/') open.push(name);
    }
  }
  return { elements, words, strange: [...strange, ...open.map((name) => `<${name}> stays open`)] };
}
