import { html, nothing, type TemplateResult } from 'lit';
import { unsafeHTML } from 'lit/directives/unsafe-html.js';
import type { CheckedFormula, Syntax } from '../../language/index.ts';
import { formulaMath, math, numbersMath, symbolMath } from '../../record/index.ts';
import type { Shown } from '../session/shown.ts';
import { type FormulaLine, formulaLines } from './formula-lines.ts';
import { formulaWidth } from './formula-width.ts';

/** A formula typeset: on how many lines, and how wide (in em of its type). */
interface Set {
  readonly markup: readonly string[];
  readonly width: number;
}

const set = new WeakMap<CheckedFormula, Map<number, Set>>();

/** The typeset form of a formula for lines of `most` em; made once for each formula. */
export function typesetFormula(checked: CheckedFormula, most: number): Set {
  const byWidth = set.get(checked) ?? new Map<number, Set>();
  set.set(checked, byWidth);
  const known = byWidth.get(most);
  if (known) return known;
  const made = setLines(formulaLines(checked.syntax, most), formulaMath, formulaWidth);
  byWidth.set(most, made);
  return made;
}

/** A formula with the numbers of now put in. */
export function typesetNumbers(
  checked: CheckedFormula,
  most: number,
  shown: (name: string) => Shown | undefined,
): Set {
  const textOf = (name: string): string => {
    const value = shown(name);
    return value ? `${value.number} ${value.unit}` : name;
  };
  const lines = formulaLines(checked.syntax, most, textOf);
  const draw = (node: Syntax): string => numbersMath(node, shown);
  return setLines(lines, draw, (node) => formulaWidth(node, textOf));
}

function setLines(
  lines: readonly FormulaLine[],
  draw: (node: Syntax) => string,
  width: (node: Syntax) => number,
): Set {
  return {
    markup: lines.map(({ sign, node }) =>
      math(sign === '' ? draw(node) : `<mo>${escaped[sign]}</mo>${draw(node)}`),
    ),
    width: Math.max(...lines.map(({ sign, node }) => width(node) + (sign === '' ? 0 : 1.3))),
  };
}

const escaped = {
  '+': '+',
  '−': '−',
  '≤': '≤',
  '<': '&lt;',
  '≥': '≥',
  '>': '&gt;',
  '=': '=',
  '≠': '≠',
} as const;

/** Whether a formula has numbers to put in: one that is a number or a name alone says nothing new. */
export function hasNumbers(node: Syntax): boolean {
  return node.kind !== 'number' && node.kind !== 'text' && node.kind !== 'error' && node.kind !== 'truth';
}

/** The lines of a typeset formula. */
export function drawFormula({ markup }: Set, kind: 'symbols' | 'numbers'): TemplateResult {
  return html`<div class="maths ${kind}">
    ${kind === 'numbers' ? html`<span class="equals" aria-hidden="true">=</span>` : nothing}
    <div class="lines">${markup.map((line) => html`<div class="maths-line">${unsafeHTML(line)}</div>`)}</div>
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
  return html`${unsafeHTML(markup)}`;
}
