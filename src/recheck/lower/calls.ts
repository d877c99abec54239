import type { CallNode, LoweringTools } from '../../language/index.ts';
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
    case 'each': {
      const each = node.args.map((arg) => lowerer.operand(arg, site));
      return `(${fn.lower(each, [], node.options, eachTools(node, site, lowerer))})`;
    }
    case 'text':
    case 'special':
      return giveUp(`${fn.name} is not lowered to plain formulas`);
  }
}

/** For a rounding function, tools that remember which cells hold the quotients it rounds. */
function eachTools(node: CallNode, site: Site, lowerer: Lowerer): LoweringTools {
  const tools = lowerer.tools(site);
  if (node.fn.group !== 'rounding') return tools;
  return {
    ...tools,
    helper: (formula) => {
      const { place, at } = lowerer.helper(formula, site);
      lowerer.rounded(place, site.row);
      return at;
    },
  };
}
