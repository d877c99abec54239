import { problem } from '../../diagnostics/index.ts';
import type { FunctionEntry } from '../functions/entry.ts';
import type { CallSyntax } from '../syntax.ts';
import { onAxes, plainType, truthType, unionAxes } from '../type.ts';
import type { BranchNode, CompareNode, NumberNode, Typed } from '../typed.ts';
import { broken, type Context, written } from './context.ts';
import { alike } from './taking.ts';
import { describe } from './words.ts';

interface Plan {
  readonly arms: readonly { readonly when: Typed; readonly value: Typed }[];
  readonly otherwise?: Typed;
}

/** How each branching function reads its arguments as arms. */
const plans: Readonly<Record<string, (args: readonly Typed[]) => Plan>> = {
  IF: ([when, then, otherwise]) => ({ arms: [{ when: must(when), value: must(then) }], ...last(otherwise) }),
  IFS: (args) => {
    const arms = pairs(args).map(([when, value]) => ({ when, value }));
    const final = arms[arms.length - 1];
    const always = final?.when.kind === 'truth' && final.when.value;
    return always ? { arms: arms.slice(0, -1), otherwise: final.value } : { arms };
  },
  SWITCH: ([subject, ...rest]) => {
    const arms = pairs(rest).map(([other, value]) => ({ when: equals(must(subject), other), value }));
    return { arms, ...last(rest.length % 2 === 1 ? rest[rest.length - 1] : undefined) };
  },
  CHOOSE: ([index, ...values]) => ({
    arms: values.map((value, position) => ({
      when: equals(must(index), ordinal(value, position + 1)),
      value,
    })),
  }),
};

/** IF, IFS, SWITCH and CHOOSE: every branch is checked, and all must be alike. */
export function checkBranch(fn: FunctionEntry, node: CallSyntax, context: Context): Typed {
  const args = node.args.map((arg) => context.check(arg));
  if (args.some((arg) => arg.type.kind === 'unknown')) return broken(node);
  const lone = fn.name === 'IFS' && args.length % 2 === 1 ? args[args.length - 1] : undefined;
  if (lone) {
    const because = 'the last value has no condition before it; TRUE is the condition for all else';
    const fixes = [{ label: 'TRUE; …', from: lone.from, to: lone.from, insert: 'TRUE; ' }];
    context.report(problem('function-refuses', lone, { function: fn.name, because }, fixes));
    return broken(node);
  }
  const plan = plans[fn.name];
  if (!plan) throw new Error(`${fn.name} has no plan of branches`);
  if (!subjectFits(fn, args, context)) return broken(node);
  const { arms, otherwise } = plan(args);
  for (const { when } of arms) {
    if (when.type.kind === 'truth') continue;
    const facts = {
      function: fn.name,
      argument: 'the condition',
      written: written(context, when),
      is: describe(when, context.scope.units),
      wanted: 'true or false, such as a comparison',
    };
    context.report(problem('argument-kind', when, facts));
    return broken(node);
  }
  const values = [...arms.map((arm) => arm.value), ...(otherwise ? [otherwise] : [])];
  const type = alike(fn, values, context);
  if (!type) return broken(node);
  const axes = unionAxes([
    ...arms.map((arm) => arm.when.type.axes),
    ...values.map((value) => value.type.axes),
  ]);
  const { from, to } = node;
  return {
    kind: 'branch',
    fn,
    type: onAxes(type, axes),
    from,
    to,
    args,
    arms,
    ...(otherwise && { otherwise }),
  } satisfies BranchNode;
}

/** SWITCH compares its first argument with each value, CHOOSE counts with it. */
function subjectFits(fn: FunctionEntry, args: readonly Typed[], context: Context): boolean {
  const [subject, ...rest] = args;
  if (!subject) return false;
  if (fn.name === 'SWITCH') {
    const values = rest.slice(0, rest.length - (rest.length % 2)).filter((_, index) => index % 2 === 0);
    return alike(fn, [subject, ...values], context) !== undefined;
  }
  if (fn.name !== 'CHOOSE' || (subject.type.kind === 'number' && subject.type.dimension.key === ''))
    return true;
  const facts = {
    function: fn.name,
    argument: 'the index',
    written: written(context, subject),
    is: describe(subject, context.scope.units),
    wanted: 'a plain number',
  };
  context.report(problem('argument-kind', subject, facts));
  return false;
}

function must(arg: Typed | undefined): Typed {
  if (!arg) throw new Error('the argument count was not checked');
  return arg;
}

function last(otherwise: Typed | undefined): { otherwise?: Typed } {
  return otherwise ? { otherwise } : {};
}

function pairs(args: readonly Typed[]): (readonly [Typed, Typed])[] {
  const found: (readonly [Typed, Typed])[] = [];
  for (let at = 0; at + 1 < args.length; at += 2) found.push([must(args[at]), must(args[at + 1])]);
  return found;
}

function equals(left: Typed, right: Typed): CompareNode {
  const type = onAxes(truthType, unionAxes([left.type.axes, right.type.axes]));
  return { kind: 'compare', op: '=', type, from: right.from, to: right.to, left, right };
}

function ordinal(at: Typed, value: number): NumberNode {
  return { kind: 'number', type: plainType, from: at.from, to: at.to, si: value, written: value };
}
