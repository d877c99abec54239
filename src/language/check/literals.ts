import { type Fix, problem, shiftProblem } from '../../diagnostics/index.ts';
import { readUnit, toSI, withPowerSigns } from '../../units/index.ts';
import type { NumberSyntax } from '../syntax.ts';
import { plainType, type Type, zeroType } from '../type.ts';
import type { Typed } from '../typed.ts';
import { typeOfUnit } from '../unit-type.ts';
import { broken, type Context, written } from './context.ts';

/** A number, with its unit read; the token `0` alone fits any dimension. */
export function checkNumber(node: NumberSyntax, context: Context): Typed {
  const { from, to, value } = node;
  if (!node.unit) {
    const type: Type = value === 0 ? zeroType : plainType;
    return { kind: 'number', type, from, to, si: value, written: value };
  }
  const read = readUnit(node.unit.text, context.scope.units);
  if (!read.ok && context.scope.resolve(node.unit.text.trim())) {
    const [number = '', rest = ''] = [
      written(context, { from, to: node.unit.from }).replace(/[\s(]+$/, ''),
      node.unit.compound ? `(${node.unit.text})` : node.unit.text,
    ];
    const instead = `${number} * ${rest}`;
    const facts = { number, written: rest, instead };
    context.report(
      problem('unwritten-product', node, facts, [{ label: instead, from, to, insert: instead }]),
    );
    return broken(node);
  }
  if (!read.ok) {
    for (const slip of read.problems) {
      const told = shiftProblem(slip, node.unit.from);
      context.report(node.unit.compound ? told : { ...told, fixes: told.fixes.map(inParentheses) });
    }
    return broken(node);
  }
  if (isOtherSpelling(node.unit.text, context)) {
    const number = written(context, { from, to: node.unit.from }).replace(/[\s(]+$/, '');
    const name = node.unit.text.trim();
    const [first, second] = [`${number} ${symbolOf(name, context)}`, `${number} * ${name}`];
    const fixes = [first, second].map((insert) => ({ label: insert, from, to, insert }));
    const facts = { written: written(context, node), name, value: true, first, second };
    context.report(problem('unit-or-name', node, facts, fixes));
    return broken(node);
  }
  const unit = read.value;
  if (unit.point === 'date') {
    context.report(problem('date-as-unit', node, {}));
    return broken(node);
  }
  return { kind: 'number', type: typeOfUnit(unit), from, to, si: toSI(value, unit), written: value, unit };
}

/** Whether a unit behind a number is a spelling of one, no symbol, and the name of a value too: `5 m2`, `8 hrs`. */
function isOtherSpelling(unit: string, { scope }: Context): boolean {
  const name = unit.trim();
  return !scope.units.infos.has(name) && scope.resolve(name) !== undefined;
}

/** A unit as its symbol is written behind a number: `(m^2)` for `m2`, `h` for `hrs`. */
function symbolOf(name: string, { scope }: Context): string {
  const of = [...scope.units.infos.values()].find(({ aliases }) => aliases.includes(name));
  return of?.symbol ?? `(${withPowerSigns(name)})`;
}

/** A unit of several parts is written in parentheses behind a number of a formula. */
function inParentheses(fix: Fix): Fix {
  if (/^[^\s/^·*()]+$/.test(fix.insert)) return fix;
  return { ...fix, label: `(${fix.insert})`, insert: `(${fix.insert})` };
}
