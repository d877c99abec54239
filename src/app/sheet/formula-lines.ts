import type { Syntax } from '../../language/index.ts';
import { formulaWidth, type TextOf } from './formula-width.ts';

/** One line of a formula set on several: the sign in front of it, and its part of the tree. */
export interface FormulaLine {
  readonly sign: '' | '+' | '−' | '≤' | '<' | '≥' | '>' | '=' | '≠';
  readonly node: Syntax;
}

const comparisonSigns = { '<=': '≤', '<': '<', '>=': '≥', '>': '>', '=': '=', '<>': '≠' } as const;

/**
 * A formula on as few lines as the width (in em) allows, broken in front of the plus, minus and comparison signs at
 * its top, as books break them. What cannot be broken stays on one line.
 */
export function formulaLines(node: Syntax, most: number, textOf?: TextOf): readonly FormulaLine[] {
  const terms = termsOf(node);
  const lines: FormulaLine[] = [];
  let width = 0;
  for (const term of terms) {
    const own = formulaWidth(term.node, textOf) + 1.3;
    const last = lines.at(-1);
    const joined = last && joinTerm(last, term, node);
    if (joined && width + own <= most) {
      lines[lines.length - 1] = joined;
      width += own;
    } else {
      lines.push(term);
      width = own;
    }
  }
  return lines;
}

/** The terms of a sum, each with its sign; a comparison's right side starts a line of its own. */
function termsOf(node: Syntax): readonly FormulaLine[] {
  if (node.kind === 'binary' && (node.op === '+' || node.op === '-'))
    return [...termsOf(node.left), { sign: node.op === '+' ? '+' : '−', node: node.right }];
  if (node.kind === 'comparison') {
    const [first, ...more] = termsOf(node.right);
    const right = { sign: comparisonSigns[node.op], node: first?.node ?? node.right };
    return [...termsOf(node.left), right, ...more];
  }
  return [{ sign: '', node }];
}

/** A line with one more term; signs other than plus and minus begin lines. */
function joinTerm(line: FormulaLine, term: FormulaLine, whole: Syntax): FormulaLine | undefined {
  if (term.sign !== '+' && term.sign !== '−') return undefined;
  const op = term.sign === '+' ? '+' : '-';
  const { from } = line.node;
  const { to } = term.node;
  const opSpan = { from: line.node.to, to: term.node.from };
  if (from > to || from < whole.from) return undefined;
  return {
    sign: line.sign,
    node: { kind: 'binary', op, left: line.node, right: term.node, opSpan, from, to },
  };
}
