import { html, nothing, type TemplateResult } from 'lit';
import type { CheckedFormula, Syntax } from '../../../language/index.ts';
import { formulaMath, math, numbersMath, symbolMath } from '../../../record/index.ts';
import { shownText } from '../../session/shown.ts';
import { drawMarkup } from '../../style/markup.ts';
import { formulaLines } from './formula-lines.ts';
import type { FormulaLine, Piece } from './formula-pieces.ts';
import { takenBranch } from './taken-branch.ts';
import type { NamedValues } from './values-by-name.ts';

/** A formula typeset: on how many lines, and how wide (in em of its type). */
interface Set {
  readonly lines: readonly { readonly markup: string; readonly indent: number }[];
  readonly width: number;
  /** Whether an equals sign leads on to it: what is true or false equals no number. */
  readonly equals?: boolean;
}

const set = new WeakMap<CheckedFormula, Map<number, Set>>();

/** The typeset form of a formula for lines of `most` em; made once for each formula. */
export function typesetFormula(checked: CheckedFormula, most: number): Set {
  const byWidth = set.get(checked) ?? new Map<number, Set>();
  set.set(checked, byWidth);
  const known = byWidth.get(most);
  if (known) return known;
  const made = setLines(formulaLines(checked.syntax, most), formulaMath);
  byWidth.set(most, made);
  return made;
}

/**
 * A formula with the numbers of now put in, of a choice between formulas the branch that holds. Undefined where that
 * changes nothing, as in a formula whose names are all columns.
 */
export function typesetNumbers(checked: CheckedFormula, most: number, values: NamedValues): Set | undefined {
  const taken = takenBranch(checked.syntax, values.fact);
  const put = setNumbers(taken, most, values.shown(taken));
  const bare = setNumbers(checked.syntax, most, () => undefined);
  if (put.lines.every(({ markup }, at) => markup === bare.lines[at]?.markup)) return undefined;
  return { ...put, equals: checked.typed.type.kind !== 'truth' };
}

function setNumbers(node: Syntax, most: number, shown: ReturnType<NamedValues['shown']>): Set {
  const textOf = (name: string): string => {
    const value = shown(name);
    if (!value) return name;
    return value.number.startsWith('−') ? `(${shownText(value)})` : shownText(value);
  };
  return setLines(formulaLines(node, most, textOf), (one) => numbersMath(one, shown), '×');
}

function setLines(lines: readonly FormulaLine[], draw: (node: Syntax) => string, times = '·'): Set {
  return {
    lines: lines.map(({ indent, pieces }) => ({
      indent,
      markup: math(pieces.map((piece) => drawPiece(piece, draw, times)).join('')),
    })),
    width: Math.max(...lines.map(({ indent, width }) => indent + width)),
  };
}

function drawPiece(piece: Piece, draw: (node: Syntax) => string, times: string): string {
  switch (piece.kind) {
    case 'node':
      return draw(piece.node);
    case 'sign':
      return drawSign(piece.text === '·' ? times : piece.text, piece.form);
    case 'raised':
    case 'lowered': {
      const name = piece.kind === 'raised' ? 'msup' : 'msub';
      return `<${name}>${drawSign(piece.text, 'postfix')}<mrow>${draw(piece.node)}</mrow></${name}>`;
    }
    case 'words':
      return `<mtext>${piece.text}</mtext>`;
    case 'name':
      return `<mi class="u">${piece.text}</mi>`;
  }
}

/** A sign between the pieces of a line; parentheses keep their size, since what they hold is on other lines too. */
function drawSign(text: string, form: string): string {
  const separator = text === ';' ? ' class="separator"' : '';
  return `<mo form="${form}" stretchy="false"${separator}>${escapeSign(text)}</mo>`;
}

const escapeSign = (text: string): string => (text === '<' ? '&lt;' : text === '&' ? '&amp;' : text);

/** Whether a formula has numbers to put in: one that is a number or a name alone says nothing new. */
export function hasNumbers(node: Syntax): boolean {
  return node.kind !== 'number' && node.kind !== 'text' && node.kind !== 'error' && node.kind !== 'truth';
}

/** The lines of a typeset formula. */
export function drawFormula({ lines, equals }: Set, kind: 'symbols' | 'numbers'): TemplateResult {
  return html`<div class="maths ${kind}">
    ${equals ? html`<span class="equals" aria-hidden="true">=</span>` : nothing}
    <div class="lines">${lines.map(
      ({ markup, indent }) =>
        html`<div class="maths-line" .style=${`padding-inline-start: ${indent.toFixed(1)}em`}>${drawMarkup(markup)}</div>`,
    )}</div>
  </div>`;
}

const symbols = new Map<string, string>();

/** The symbol of a line. */
export function drawSymbol(name: string): TemplateResult {
  let markup = symbols.get(name);
  if (markup === undefined) {
    markup = math(symbolMath(name));
    symbols.set(name, markup);
  }
  return html`${drawMarkup(markup)}`;
}
