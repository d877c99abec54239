export { levelSign, math, power, row, upright, words } from './math/markup.ts';
export { symbolMath } from './math/symbol.ts';
export { formulaMath, numbersMath } from './math/typeset.ts';
export { SOURCE_KINDS, type Source, type SourceKind, saysOfItself, sourcesOf } from './sources.ts';
export { differenceShare, statedLines } from './stated-lines.ts';
