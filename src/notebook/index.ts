export { type BroughtSheets, bringSheets } from './bring/bring-sheets.ts';
export { type CopiedParts, partsToPut } from './bring/put-parts.ts';
export { takeAlong } from './bring/take-along.ts';
export { optionsOf } from './build-model.ts';
export { ChangedLines } from './changed-lines.ts';
export { methodDiffers } from './check-methods.ts';
export type { Dangling } from './dangling.ts';
export { enterRows, enterValues } from './enter.ts';
export { enterInTurn } from './enter-in-turn.ts';
export { type Evaluation, evaluateFormula } from './evaluate-formula.ts';
export {
  columnNamed,
  lineNamed,
  type Settable,
  setNamed,
  settableNamed,
  tableNamed,
} from './find-by-name.ts';
export type { Elements, FormulaParts, PartPlace } from './formula-parts.ts';
export { holdsByStated } from './holds-by-stated.ts';
export { canLink, keepHeldEdit, linkEdit, linkTargets, unlinkEdit } from './link-line.ts';
export {
  type BrokenLink,
  brokenLink,
  brokenLinks,
  type LinkedLine,
  linkedLines,
  linkSource,
  type OpenLink,
  openLinks,
} from './links.ts';
export {
  type FormulaInForce,
  formulaInForce,
  type MethodUse,
  methodByChoice,
  methodInForce,
  methodsUsed,
} from './method-in-force.ts';
export { indexFor, methodWords, rowsInWords } from './methods.ts';
export {
  type FormulaColumnItem,
  type FormulaItem,
  type InputColumnItem,
  type InputItem,
  type Item,
  type MethodItem,
  type Methods,
  type Model,
  namesUsed,
  referencesOfItem,
  type TableItem,
} from './model.ts';
export { type NamedPart, type Names, namesOf, resolveName } from './names.ts';
export { type Respell, respellLine, usesInPart } from './names-in-parts.ts';
export { type AppliedEdit, type Notebook, openNotebook } from './notebook.ts';
export { recheckProgram, tooLargeToRecheck } from './recheck-program.ts';
export { restsDirectlyOn, takersOf } from './resting-on.ts';
export {
  byNearness,
  type ColumnResult,
  type EasedRemark,
  type Quantity,
  type Result,
  shareOf,
  type Value,
  type Verdict,
  verdictWord,
  writeUtilisation,
} from './result.ts';
export { spelledName, spellingProblems } from './spelled-name.ts';
export { itemId, namesAtStart, namesInOrigin, type StartedPair, startedPairs } from './started-pairs.ts';
export { isReasonOpen, SIDES, type Side, type Stated, type StatedSides } from './stated.ts';
export type { StatedCells } from './stated-column.ts';
export {
  differenceOf,
  resultAt,
  type StatedHere,
  type StatedValue,
  statedIn,
  statedValues,
} from './stated-values.ts';
export { toMend, waits } from './to-mend.ts';
export { tryEntry } from './try-entry.ts';
export type { Trial } from './try-formula.ts';
export { numbersOf, tryCells } from './try-rows.ts';
export { readAsStated, type StatedPlace, type StatedTrial, tryStated } from './try-stated.ts';
