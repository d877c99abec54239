export type { ChangedIds } from './changed-ids.ts';
export type { CellEdits, ColumnInfo, Given, Place } from './edits.ts';
export { createEngine, type Engine, type Pending } from './engine.ts';
export type { Wording } from './explain/write-operand.ts';
export type { ColumnReading, Reading, Value } from './read.ts';
export type { ValueKind } from './store/cells.ts';
export type { TrialPlace } from './trial.ts';
export type { Allowance } from './update/slice.ts';
