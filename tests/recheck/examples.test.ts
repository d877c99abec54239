import { expect, test } from 'vitest';
import { type FunctionEntry, functionTable, type Typed } from '../../src/language/index.ts';
import { recheck } from '../../src/recheck/index.ts';
import { computed, exampleBook } from './books.ts';

const lowered = functionTable.filter(({ lower }) => lower !== undefined);

/** The tree with every call of a function lowered by another rule. */
function withLower(node: Typed, name: string, lower: NonNullable<FunctionEntry['lower']>): Typed {
  const visit = (part: unknown): unknown => {
    if (Array.isArray(part)) return part.map(visit);
    if (typeof part !== 'object' || part === null) return part;
    const { fn, type, ...rest } = part as { fn?: FunctionEntry; type?: unknown };
    const inner = Object.fromEntries(Object.entries(rest).map(([key, value]) => [key, visit(value)]));
    if (fn === undefined) return type === undefined ? inner : { ...inner, type };
    return { ...inner, type, fn: fn.name === name ? { ...fn, lower } : fn };
  };
  return visit(node) as Typed;
}

/** A lowering that is wrong by one in a thousand, by one where the value is zero, or says the opposite. */
function spoiled(fn: FunctionEntry): NonNullable<FunctionEntry['lower']> {
  return (each, columns, options, tools) => {
    const right = fn.lower?.(each, columns, options, tools);
    if (typeof fn.example.value === 'boolean')
      return `(${right})=${tools.compare('<', tools.constant(2), tools.constant(1))}`;
    return `(${right})*${tools.constant(1.001)}+${tools.constant(fn.example.value === 0 ? 1 : 0)}`;
  };
}

test.each(lowered)('the example of $name agrees, and is found once its lowering is broken', async (fn) => {
  const { within } = fn.example;
  const { program, values } = computed(exampleBook(fn.example));
  const sound = await recheck(program, values);
  expect(sound).toMatchObject({ withoutValue: 0, findings: [], indeterminate: [], notRechecked: [] });
  const cells = program.cells.map((cell) =>
    cell.kind === 'formula' ? { ...cell, tree: withLower(cell.tree, fn.name, spoiled(fn)) } : cell,
  );
  const broken = await recheck({ ...program, cells }, values);
  expect(broken.findings.length).toBeGreaterThan(0);
  for (const { id } of broken.findings)
    expect(id).toBe(within === undefined ? 's.result' : `s.${within}.result`);
});

test('functions without a lowering say why, and no others do', () => {
  const without = functionTable.filter(({ lower, evaluate }) => !lower && evaluate.kind !== 'special');
  expect(without.filter(({ noRecheck }) => noRecheck === undefined)).toEqual([]);
  expect(lowered.filter(({ noRecheck }) => noRecheck !== undefined)).toEqual([]);
});
