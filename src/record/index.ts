export { changeList } from './changes/change-list.ts';
export { changesInShort, checkedLine, goneWords, saidWords, sinceSignature } from './checked-lines.ts';
export { type RecordInput, writeRecord } from './file/write-record.ts';
export { countStated } from './findings/count-stated.ts';
export { failureWords } from './findings/failure-words.ts';
export { type FoundCheck, findingsOf, isByStated, sheetOf } from './findings/findings.ts';
export { groupedSheets } from './findings/grouped-sheets.ts';
export { sheetStates, stateWords } from './findings/sheet-states.ts';
export { appliesInWords } from './lines/applies-in-words.ts';
export { governingLines } from './lines/governing-lines.ts';
export { methodsShown } from './lines/methods-shown.ts';
export { type Marks, marksOfBook, sheetReferences } from './lines/sheet-references.ts';
export { sourceOfLine } from './lines/source-of-line.ts';
export { type SetFormula, typesetBranch, typesetFormula, typesetText } from './math/formula-set.ts';
export { nameWidth } from './math/formula-width.ts';
export { math } from './math/markup.ts';
export { symbolMath } from './math/symbol.ts';
export { formulaMath, numbersMath } from './math/typeset.ts';
export type { GoverningRow } from './numbers/governing-row.ts';
export { isSideWorked } from './numbers/has-numbers.ts';
export { lineNumbers, rowNumbers } from './numbers/numbers-put-in.ts';
export type { WorkedFormula } from './numbers/worked-formula.ts';
export type { BranchNote } from './numbers/working.ts';
export { fieldsTold, labelOfPart, otherwiseWords, startWords } from './origin-words.ts';
export { pageRules } from './paper/page-rules.ts';
export { type ReviewSheet, reviewSheet } from './paper/review-sheet.ts';
export { PROGRAM_VERSION } from './program-version.ts';
export {
  SOURCE_ADVICE,
  SOURCE_KINDS,
  type Source,
  type SourceKind,
  saysOfItself,
  sourcesOf,
} from './sources.ts';
export { statedLines } from './stated-lines.ts';
export { type PrintedRow, type RowsOnPaper, rowsOnPaper } from './tables/rows-on-paper.ts';
export { type CellView, type ColumnView, columnSum, columnView } from './values/cell-view.ts';
export { apartWords, checkedValue, checkStateWords, unitByHand } from './values/checked-words.ts';
export { choiceWords } from './values/choice-words.ts';
export { columnSummed } from './values/column-summed.ts';
export { comparedSides, failsBy, shownSides } from './values/compared-sides.ts';
export { countedDo, countWords } from './values/count-words.ts';
export { entryView } from './values/entry-view.ts';
export { displayUnit, formatQuantity, quantityText } from './values/format-quantity.ts';
export { type AlignedQuantity, idsOfLikeLines, numberOfLine } from './values/like-lines.ts';
export { labelOf, localName } from './values/names.ts';
export { noProblemWords, notYetWords } from './values/not-yet-words.ts';
export { idInWords, problemInWords, refusalWords } from './values/persons-words.ts';
export { printedRowsWords } from './values/printed-rows.ts';
export { resultText } from './values/result-text.ts';
export {
  computedInWords,
  differenceWords,
  statedWords,
  whyNotComputed,
  wordsOfValue,
} from './values/stated-words.ts';
export type { UnitsView } from './values/units-view.ts';
export { unlistedKeys } from './values/unlisted-keys.ts';
