import {
  type BranchNode,
  type CallSyntax,
  changeParts,
  type Syntax,
  type Typed,
} from '../../language/index.ts';
import type { PartPlace } from '../../notebook/index.ts';
import { workAggregate } from './worked-aggregates.ts';
import { workLookup } from './worked-lookups.ts';
import { workRunning } from './worked-running.ts';
import type { BranchNote, Working } from './working.ts';

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
  const notes: BranchNote[] = [];
  for (const { when, value } of typed.arms) {
    const holds = working.notebook.parts.valueOf(when, place);
    if (holds?.kind !== 'truth') return undefined;
    notes.push(...branchNotes(node, when, holds.truth, place, working));
    if (holds.truth) return workArm(value);
  }
  return typed.otherwise && workArm(typed.otherwise);

  /** A value may stand in parentheses, which are no part of what it was understood as. */
  function workArm({ from }: Typed): Syntax | undefined {
    // All arms of a choice by a value ask the same.
    for (const note of notes)
      if (notes.find(({ asked }) => asked === note.asked) === note) working.note(note, place);
    const arm = node.args.find((arg) => arg.from <= from && from < arg.to);
    return arm && working.work(arm, place);
  }
}

/** What one arm asks, if anything: its condition, or what chooses among the values of all. */
function branchNotes(
  { args }: CallSyntax,
  when: Typed,
  isSo: boolean,
  place: PartPlace,
  working: Working,
): readonly BranchNote[] {
  const condition = args.find((arg) => working.typedOf(arg) === when);
  const asked = condition ?? args[0];
  if (!asked) return [];
  const answer = condition ? (isSo ? 'is so' : 'is not so') : 'chosen';
  return [{ asked, put: numbersPut(asked, place, working), answer }];
}

/** A part of a formula with what its names and its calls over columns come to in their place. */
function numbersPut(node: Syntax, place: PartPlace, working: Working): Syntax {
  const typed = standsForOne(node, working) ? working.typedOf(node) : undefined;
  const value = typed && working.notebook.parts.valueOf(typed, place);
  return value ? working.put(value) : changeParts(node, (part) => numbersPut(part, place, working));
}

/** Whether a part has one number in its place: a name, or a call that gathers a column. */
function standsForOne(part: Syntax, { typedOf }: Working): boolean {
  if (part.kind === 'name') return true;
  const typed = part.kind === 'call' ? typedOf(part) : undefined;
  return typed?.kind === 'call' && typed.fn.evaluate.kind === 'gather';
}
