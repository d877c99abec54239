import type { CallNode, Lower } from '../../language/index.ts';
import { lowerGather } from './gather.ts';
import type { Lowerer } from './lowerer.ts';
import { giveUp } from './obstacle.ts';
import type { Site } from './site.ts';

/** A call, by the way its function is evaluated; a function that is not recomputed gives the formula up. */
export function lowerCall(node: CallNode, site: Site, lowerer: Lowerer): string {
  const { fn } = node;
  if (!fn.lower) return giveUp(`${fn.name}: ${fn.noRecheck ?? 'it is not lowered to plain formulas'}`);
  switch (fn.evaluate.kind) {
    case 'gather':
      return lowerGather(node, fn.lower, site, lowerer);
    case 'scan':
      return lowerer.running(node, site.row ?? 0);
    case 'each':
      return `(${lowerEach(node, fn.lower, site, lowerer)})`;
    case 'text':
    case 'special':
      return giveUp(`${fn.name} is not lowered to plain formulas`);
  }
}

/** A function of single numbers; the cells on which it hangs whether its result can be compared are watched. */
function lowerEach(node: CallNode, lower: Lower, site: Site, lowerer: Lowerer): string {
  // Of a truth every lowering writes each argument once.
  const write = node.fn.group === 'logic' ? lowerer.writtenOnce : lowerer.operand;
  const each = node.args.map((arg) => write(arg, site));
  const tools = lowerer.tools(site);
  const watching = (formula: string): string => {
    const { place, at } = lowerer.helper(formula, site);
    lowerer.watch('tie', place, site.row);
    return at;
  };
  const rounds = node.fn.group === 'rounding';
  const formula = lower(each, [], node.options, rounds ? { ...tools, helper: watching } : tools);
  const [chance] = each;
  if (chance !== undefined && formula.includes('NORM.S.INV('))
    lowerer.watch('tail', lowerer.helper(chance, site).place, site.row);
  return formula;
}
