import { namesIn, parseFormula } from '../language/index.ts';

type Spans = readonly { readonly name: string; readonly from: number; readonly to: number }[];

/** Where names stand in the formulas of a line: found once for as long as the line is the same. */
const spansOfLine = new WeakMap<object, Map<string, Spans>>();

/** A formula of a line with something else in place of its names; `spell` gives nothing for what stays as it is written. */
export function spelledFormula(
  line: object,
  formula: string,
  spell: (name: string) => string | undefined,
): string {
  const known = spansOfLine.get(line) ?? new Map<string, Spans>();
  spansOfLine.set(line, known);
  const spans = known.get(formula) ?? namesIn(parseFormula(formula).syntax);
  known.set(formula, spans);
  let text = '';
  let at = 0;
  for (const { name, from, to } of spans) {
    const spelled = spell(name);
    if (spelled === undefined) continue;
    text += `${formula.slice(at, from)}${spelled}`;
    at = to;
  }
  return text + formula.slice(at);
}
