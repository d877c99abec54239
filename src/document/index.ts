export { placeEdit } from './apart/place-edit.ts';
export { type FreshIds, seeEdit } from './apart/see-edit.ts';
export type { SeenEdit, SeenPatch, Sight } from './apart/seen.ts';
export {
  cellOf,
  cellsBetween,
  cellsOfColumn,
  chunksOfCells,
} from './cells.ts';
export { type Applied, applyEdit } from './edits/apply-edit.ts';
export {
  insertSheet,
  moveSheet,
  removeSheet,
  setAbout,
  setSettings,
  setSheetField,
  setTitle,
} from './edits/book-edits.ts';
export { blankMeanings, emptiedColumns } from './edits/emptied-columns.ts';
export {
  emptyHistory,
  type History,
  type HistoryMove,
  type HistoryStep,
  record,
  redo,
  undo,
} from './edits/history.ts';
export {
  type CalcPlace,
  insertMethod,
  type MethodField,
  moveMethod,
  removeMethod,
  setMethodField,
  setMethodsBy,
  useMethods,
  useOneFormula,
} from './edits/method-edits.ts';
export {
  insertPart,
  insertRow,
  movePart,
  moveRow,
  type PartField,
  type RowField,
  removePart,
  removeRow,
  replaceRow,
  setEntry,
  setFormula,
  setPartField,
  setRowField,
  setUnit,
  stateRow,
  stateSide,
} from './edits/part-edits.ts';
export { type Edit, joinEdits, type Patch } from './edits/patch.ts';
export {
  type ColumnField,
  duplicateTableRow,
  insertColumn,
  insertTableRows,
  moveColumn,
  moveTableRows,
  removeColumn,
  removeTableRows,
  replaceTableRows,
  setCells,
  setColumnField,
  stateCell,
  stateCells,
  type TableRows,
} from './edits/table-edits.ts';
export type { Touched } from './edits/touched.ts';
export {
  type ColumnPlace,
  type FoundRow,
  type FoundTable,
  findColumn,
  findRow,
  findSheet,
  findTable,
  type PartPlace,
  type RowPlace,
  type TablePlace,
} from './find.ts';
export { type Fresh, freshFor } from './fresh.ts';
export { createHasher, type Hasher, hashBook } from './hash/hasher.ts';
export { canonicalJson } from './json/canonical.ts';
export { type Path, pathText } from './json/path.ts';
export { blankBook } from './opening/blank-book.ts';
export { BOOK_BYTE_LIMIT, BOOK_LENGTH_LIMIT, type Opened, openBook } from './opening/open-book.ts';
export { openCases, openEquivalents } from './opening/open-cases.ts';
export { openCopied } from './opening/open-copied.ts';
export { recordBlock } from './opening/record-block.ts';
export { foldedOption, optionWords } from './option.ts';
export { type AboutSheets, aboutOf, aboutsOf, withoutOriginOf } from './origins.ts';
export { idOfRow, idOfRowOrNext, rowIdsOf, rowWithId } from './row-ids.ts';
export {
  type About,
  type Book,
  type BookUnit,
  type Example,
  FORMAT,
  FORMAT_VERSION,
  type Origin,
  type Settings,
  type Sheet,
  type Start,
  type Title,
} from './schema/book.ts';
export type { Case, Cases, Expectation, Tolerance } from './schema/cases.ts';
export {
  type CalcColumn,
  type Cell,
  CHUNK_CELLS,
  type Chunk,
  type Column,
  type ColumnType,
  type GivenColumn,
  type SeriesColumn,
  type StatedCell,
  TABLE_ROW_LIMIT,
} from './schema/columns.ts';
export type { Copied } from './schema/copied.ts';
export type { Equivalent, Equivalents } from './schema/equivalents.ts';
export { bookJsonSchema } from './schema/json-schema.ts';
export type { Method } from './schema/methods.ts';
export type { Chart, Figure, Part, Prose, Rows, Table } from './schema/parts.ts';
export {
  type Basis,
  type Comment,
  type HandValue,
  type Review,
  type Revision,
  type SeenMark,
  SIGNING_ROLES,
  type SigningRole,
  type SignOff,
  type Subject,
} from './schema/review.ts';
export type { Calc, Check, Choice, Given, Link, Option, Range, Row, Statement } from './schema/rows.ts';
export { NAME_LENGTH_LIMIT, NAME_PATTERN } from './schema/text-schemas.ts';
export {
  idsInPart,
  startOf,
  startOfColumn,
  startOfRow,
  startWithIds,
  withStarts,
} from './started.ts';
export {
  cellInWords,
  entryInWords,
  rowCalled,
  type StatedValue,
  statedInRows,
  statedInWords,
} from './stated-values.ts';
export { writeBook } from './write-book.ts';
