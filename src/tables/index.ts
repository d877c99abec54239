export { columnWords, type TableCell, type TableColumn } from './column.ts';
export type { Decimal } from './decimals.ts';
export { type Destination, type Mapping, namedMapping } from './mapping.ts';
export { type ReadTable, readMapped, readTable } from './read-table.ts';
export type { Delimiter } from './records.ts';
export { type TableText, tableText } from './table-text.ts';
export { type TextColumn, textColumns } from './text-columns.ts';
export { type WrittenColumn, writeTable } from './write-table.ts';
