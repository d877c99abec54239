export type { CatalogueEntry, Facts, JsonValue, Words } from './catalogue/entry.ts';
export { listed, quoted } from './catalogue/wording.ts';
export { catalogue, catalogueAreas, type FactsOf, type ProblemCode } from './catalogue.ts';
export { nearest } from './nearest.ts';
export {
  type Fix,
  fail,
  inCell,
  type Outcome,
  type Problem,
  problem,
  type Severity,
  type Span,
  shiftProblem,
  succeed,
} from './problem.ts';
export { renderProblem } from './render.ts';
