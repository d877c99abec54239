export { columnWords, type TableCell, type TableColumn } from './column.ts';
export type { Decimal } from './decimals.ts';
export { type ReadOptions, type ReadTable, readTable } from './read-table.ts';
export type { Delimiter } from './records.ts';
export { type WrittenColumn, writeTable } from './write-table.ts';
