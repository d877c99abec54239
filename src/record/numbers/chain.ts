import type { BinarySyntax, Syntax } from '../../language/index.ts';

const NOWHERE = { from: 0, to: 0 } as const;

/** Terms with one sign between them; sums among them keep parentheses. */
export function chain(terms: readonly Syntax[], op: BinarySyntax['op']): Syntax | undefined {
  const [first, ...rest] = terms;
  return rest.reduce<Syntax | undefined>(
    (sum, term) => sum && binary(sum, op, groupSyntax(term)),
    first && (op === '+' ? first : groupSyntax(first)),
  );
}

/** Two parts with a sign between them. */
export function binary(left: Syntax, op: BinarySyntax['op'], right: Syntax): Syntax {
  return { kind: 'binary', op, left, right, opSpan: NOWHERE, ...NOWHERE };
}

/** A part in parentheses where it is a sum or a difference, or has a sign of its own. */
export function groupSyntax(part: Syntax): Syntax {
  const loose = part.kind === 'negate' || (part.kind === 'binary' && (part.op === '+' || part.op === '-'));
  return loose ? { kind: 'group', inner: part, ...NOWHERE } : part;
}
