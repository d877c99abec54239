import { fail, type Outcome, succeed } from '../diagnostics/index.ts';
import {
  type DecodedText,
  decodeText,
  notText,
  type TableColumn,
  type TableText,
  tableText,
} from '../tables/index.ts';
import type { UnitRegistry } from '../units/index.ts';
import { readBytes } from './read-text.ts';
import { Refused } from './refused.ts';
import type { TableOptions } from './table-options.ts';
import { withRemedy } from './table-remedies.ts';

/** Reads a table file in UTF-8, UTF-16 or, where it is neither, Windows-1252. */
export function readTableFile(path: string): Outcome<DecodedText> {
  const all = readBytes(path);
  const decoded = decodeText(all, (encoding, bytes) =>
    new TextDecoder(encoding, { fatal: true }).decode(bytes),
  );
  return decoded === undefined ? fail(notText(all)) : succeed(decoded);
}

/** Parts the text of a table file for the given columns, as was said of it. */
export function partedFile(
  { text }: DecodedText,
  columns: readonly TableColumn[],
  registry: UnitRegistry,
  { skipped, delimiter }: TableOptions,
): Outcome<TableText> {
  const lines = text.replace(/\r\n?/g, '\n').replace(/\n$/, '').split('\n').length;
  const beyond = [...skipped].find((line) => line > lines);
  if (beyond !== undefined)
    throw new Refused(`--skip ${beyond}: the file has ${lines === 1 ? '1 line' : `${lines} lines`}`);
  const parted = tableText(text, columns, { registry, skipped, ...(delimiter && { delimiter }) });
  return parted.ok
    ? parted
    : { ok: false, problems: parted.problems.map((found) => withRemedy(found, columns)) };
}
