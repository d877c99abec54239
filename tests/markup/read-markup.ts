import { type Markup, writeMarkup } from '../../src/markup/index.ts';

const elements = new Set(
  'svg title desc defs pattern g line rect circle path text tspan math mrow mi mn mo mtext mspace mfrac msqrt mroot msub msup msubsup mtable mtr mtd'.split(
    ' ',
  ),
);
const attribute =
  /^(xmlns|id|class|role|aria-[a-z]+|data-[a-z]+|viewBox|fill|transform|patternUnits|patternTransform|stroke-width|stroke-linejoin|text-anchor|d|d?[xy]|[xy][12]|c[xy]|r|width|height|form|stretchy|movablelimits|displaystyle)$/;
const entities = new Map([
  ['lt', '<'],
  ['gt', '>'],
  ['amp', '&'],
  ['quot', '"'],
  ['#39', "'"],
]);

/** What a reader of XML makes of markup: its words, and everything in it that a drawing or a formula never has. */
export function readMarkup(markup: Markup): { readonly words: string; readonly strange: readonly string[] } {
  const strange: string[] = [];
  const open: string[] = [];
  let words = '';
  for (const [piece] of writeMarkup(markup).matchAll(/<[^>]*>|[^<]+|</g)) {
    if (!piece.startsWith('<')) {
      words += piece.replace(/&([^;\s]*);?/g, (whole, name: string) => {
        const sign = entities.get(name);
        if (sign === undefined || !whole.endsWith(';')) strange.push(whole);
        return sign ?? whole;
      });
      if (piece.includes('>')) strange.push(piece);
      continue;
    }
    const [, close, name = '', list = '', single] =
      /^<(\/?)([\w-]+)((?: [\w:-]+="[^"<>]*")*)(\/?)>$/.exec(piece) ?? [];
    const own = [...list.matchAll(/ ([\w:-]+)="/g)].map(([, key = '']) => key);
    if (!elements.has(name) || own.some((key) => !attribute.test(key))) strange.push(piece);
    if (close === '/') {
      if (open.pop() !== name) strange.push(piece);
    } else if (single !== '/') open.push(name);
  }
  return { words, strange: [...strange, ...open.map((name) => `<${name}> stays open`)] };
}
