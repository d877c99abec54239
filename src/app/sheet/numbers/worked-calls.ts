import {
  type BranchNode,
  type CallSyntax,
  type Syntax,
  syntaxParts,
  type Typed,
} from '../../../language/index.ts';
import type { PartPlace } from '../../../notebook/index.ts';
import { workAggregate } from './worked-aggregates.ts';
import { workLookup } from './worked-lookups.ts';
import { workRunning } from './worked-running.ts';
import type { Working } from './working.ts';

/** A call as it is worked by hand; undefined where only its arguments have numbers put in. */
export function workCall(node: CallSyntax, place: PartPlace, working: Working): Syntax | undefined {
  const typed = working.typedOf(node);
  switch (typed?.kind) {
    case 'branch':
      return workBranch(typed, node, place, working);
    case 'above':
    case 'row': {
      const value = working.notebook.parts.valueOf(typed, place);
      return value && working.put(value);
    }
    case 'call':
      switch (typed.fn.evaluate.kind) {
        case 'gather':
          return workLookup(typed, node, place, working) ?? workAggregate(typed, node, place, working);
        case 'scan':
          return workRunning(typed, node, place, working);
        default:
          return undefined;
      }
    default:
      return undefined;
  }
}

/** Of a choice between formulas the one that holds, and by which condition. */
function workBranch(
  typed: BranchNode,
  node: CallSyntax,
  place: PartPlace,
  working: Working,
): Syntax | undefined {
  const said = new Set<string>();
  for (const { when, value } of typed.arms) {
    const holds = working.notebook.parts.valueOf(when, place);
    if (holds?.kind !== 'truth') return undefined;
    said.add(conditionWords(node, when, holds.truth, place, working));
    if (holds.truth) return workArm(value);
  }
  return typed.otherwise && workArm(typed.otherwise);

  /** A value may stand in parentheses, which are no part of what it was understood as. */
  function workArm({ from }: Typed): Syntax | undefined {
    for (const words of said) working.note(words, place);
    const arm = node.args.find((arg) => arg.from <= from && from < arg.to);
    return arm && working.work(arm, place);
  }
}

/** A condition as it is written, with its numbers behind it and whether it holds; or what chooses among values, and its own. */
function conditionWords(
  { args }: CallSyntax,
  when: Typed,
  holds: boolean,
  place: PartPlace,
  working: Working,
): string {
  const condition = args.find((arg) => working.typedOf(arg) === when);
  const node = condition ?? args[0];
  if (!node) return '';
  const { text } = place.checked;
  const symbols = text.slice(node.from, node.to).trim();
  const numbers = withNumbers(node, place, working).trim();
  const both = numbers === symbols ? symbols : `${symbols}: ${numbers}`;
  return condition ? `${both} ${holds ? 'holds' : 'does not hold'}` : `chosen by ${both}`;
}

/** A part of a formula as it is written, with what its names and its calls over columns come to in their place. */
function withNumbers(node: Syntax, place: PartPlace, working: Working): string {
  const { text } = place.checked;
  let written = '';
  let at = node.from;
  const visit = (part: Syntax, isOperand: boolean): void => {
    const value = standsForOne(part, working) ? amountOf(part, place, working) : undefined;
    if (value === undefined) {
      for (const inner of syntaxParts(part)) visit(inner, isOperator(part));
      return;
    }
    // A sign, a unit or a power of ten would go with what stands beside it.
    const isLoose = isOperand && !/^[\d.]+$/.test(value);
    written += `${text.slice(at, part.from)}${isLoose ? `(${value})` : value}`;
    at = part.to;
  };
  visit(node, false);
  return written + text.slice(at, node.to);
}

/** Whether a part has one number in its place: a name, or a call that gathers a column. */
function standsForOne(part: Syntax, { typedOf }: Working): boolean {
  if (part.kind === 'name') return true;
  const typed = part.kind === 'call' ? typedOf(part) : undefined;
  return typed?.kind === 'call' && typed.fn.evaluate.kind === 'gather';
}

function amountOf(part: Syntax, place: PartPlace, working: Working): string | undefined {
  const typed = working.typedOf(part);
  const value = typed && working.notebook.parts.valueOf(typed, place);
  return value && working.write(value);
}

function isOperator({ kind }: Syntax): boolean {
  return kind === 'binary' || kind === 'power' || kind === 'negate' || kind === 'percent';
}
