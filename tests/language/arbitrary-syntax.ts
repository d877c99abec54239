import fc from 'fast-check';
import type { Syntax } from '../../src/language/index.ts';

const here = { from: 0, to: 0 };
const singleUnits = ['ft', 'kN', 'psi', 'degC', '°', '$', '€', 'ΔdegF'];
const compoundUnits = ['kN/m^2', 'm²', 'kip-ft', 'USD/cy', '1/ft', 'kN/(m·s)', 'ft MLLW', 'kg·m/s^2'];

const word = fc
  .stringMatching(/^[a-zA-Zγβ][a-zA-Z0-9_'Δ]{0,6}$/)
  .filter((name) => !/^(true|false)$/i.test(name));
const plainNumber: fc.Arbitrary<Syntax> = fc
  .oneof(
    fc.nat(1000),
    fc.double({ min: 0, noNaN: true, noDefaultInfinity: true }),
    fc.nat(100_000).map((n) => n / 1000),
  )
  .map((value) => ({ kind: 'number', value: value + 0, ...here }));
const quantity: fc.Arbitrary<Syntax> = fc
  .tuple(plainNumber, fc.constantFrom(...singleUnits, ...compoundUnits))
  .map(([number, text]) => {
    const unit = { text, compound: compoundUnits.includes(text), ...here };
    return { ...number, unit } as Syntax;
  });
const text: fc.Arbitrary<Syntax> = fc
  .string({ unit: 'grapheme', maxLength: 12 })
  .map((value) => ({ kind: 'text', value, ...here }));
const truth: fc.Arbitrary<Syntax> = fc.boolean().map((value) => ({ kind: 'truth', value, ...here }));
const name: fc.Arbitrary<Syntax> = fc
  .array(word, { minLength: 1, maxLength: 3 })
  .map((parts) => ({ kind: 'name', name: parts.join('.'), ...here }));

const grouped = (inner: Syntax): Syntax => ({ kind: 'group', inner, ...here });

/** The plain number a quotient is read to end with, if there is one. */
function endsWithNumber(node: Syntax): boolean {
  if (node.kind === 'negate') return endsWithNumber(node.operand);
  if (node.kind === 'binary' && (node.op === '*' || node.op === '/')) return endsWithNumber(node.right);
  return node.kind === 'number' && !node.unit;
}

/** Left-associative operators over parts that bind tighter; what would read two ways is grouped. */
function chain(
  ops: readonly ('+' | '-' | '*' | '/' | '&')[],
  part: fc.Arbitrary<Syntax>,
): fc.Arbitrary<Syntax> {
  return fc
    .tuple(part, fc.array(fc.tuple(fc.constantFrom(...ops), part), { maxLength: 2 }))
    .map(([first, rest]) =>
      rest.reduce<Syntax>((left, [op, right]) => {
        const fraction = op === '/' && right.kind === 'number' && right.unit && endsWithNumber(left);
        return { kind: 'binary', op, left, right: fraction ? grouped(right) : right, opSpan: here, ...here };
      }, first),
    );
}

/** Any tree the language can print and read without a problem. */
export const anySyntax: fc.Arbitrary<Syntax> = fc.letrec<{
  expression: Syntax;
  atom: Syntax;
  bare: Syntax;
  tight: Syntax;
  factor: Syntax;
  group: Syntax;
  call: Syntax;
}>((tie) => ({
  expression: fc.oneof(
    { maxDepth: 4, depthSize: 'small' },
    tie('atom'),
    chain(['&'], chain(['+', '-'], chain(['*', '/'], tie('factor')))),
    fc
      .tuple(
        chain(['&'], chain(['+', '-'], tie('factor'))),
        fc.constantFrom('=', '<>', '<', '<=', '>', '>=' as const),
        chain(['+', '-'], chain(['*', '/'], tie('factor'))),
      )
      .map(([left, op, right]): Syntax => ({ kind: 'comparison', op, left, right, ...here })),
  ),
  group: tie('expression').map(grouped),
  call: fc
    .tuple(word, fc.array(tie('expression'), { maxLength: 3 }))
    .map(([fn, args]): Syntax => ({ kind: 'call', name: fn, nameSpan: here, args, ...here })),
  // What a power or a root may stand on without a second reading.
  bare: fc.oneof({ maxDepth: 4, depthSize: 'small' }, plainNumber, name, tie('call'), tie('group')),
  atom: fc.oneof({ maxDepth: 4, depthSize: 'small' }, tie('bare'), quantity, text, truth),
  tight: fc.oneof(
    { maxDepth: 4, depthSize: 'small' },
    tie('atom'),
    fc
      .oneof(plainNumber, tie('group'), tie('call'))
      .map((operand): Syntax => ({ kind: 'percent', operand, ...here })),
    tie('atom').map((operand): Syntax => ({ kind: 'root', operand, ...here })),
  ),
  factor: fc.oneof(
    { maxDepth: 4, depthSize: 'small' },
    tie('tight'),
    tie('tight').map((operand): Syntax => ({ kind: 'negate', operand, ...here })),
    fc.tuple(tie('bare'), tie('bare'), fc.boolean()).map(([base, raised, negative]): Syntax => {
      const exponent: Syntax = negative ? { kind: 'negate', operand: raised, ...here } : raised;
      return { kind: 'power', base, exponent, ...here };
    }),
  ),
})).expression;
