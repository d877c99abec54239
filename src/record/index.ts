export { math } from './math/markup.ts';
export { symbolMath } from './math/symbol.ts';
export { formulaMath, numbersMath } from './math/typeset.ts';
