import {
  type DecodedText,
  decodeText,
  type TableColumn,
  type TableText,
  tableText,
} from '../tables/index.ts';
import type { UnitRegistry } from '../units/index.ts';
import { readBytes } from './read-text.ts';
import { Refused, refusedBy } from './refused.ts';
import type { TableOptions } from './table-options.ts';
import { withRemedy } from './table-remedies.ts';

/** Reads a table file in UTF-8, UTF-16 or, where it is neither, Windows-1252. */
export function readTableFile(path: string): DecodedText {
  const decoded = decodeText(readBytes(path), (encoding, bytes) =>
    new TextDecoder(encoding, { fatal: true }).decode(bytes),
  );
  if (decoded === undefined)
    throw new Refused(
      `${path} is no text, but perhaps a spreadsheet file or an encoding that is not known; save it as CSV in UTF-8`,
    );
  return decoded;
}

/** Parts the text of a table file for the given columns, as was said of it. */
export function partedFile(
  { text }: DecodedText,
  path: string,
  columns: readonly TableColumn[],
  registry: UnitRegistry,
  { skipped, delimiter }: TableOptions,
): TableText {
  const lines = text.replace(/\r\n?/g, '\n').replace(/\n$/, '').split('\n').length;
  const beyond = [...skipped].find((line) => line > lines);
  if (beyond !== undefined)
    throw new Refused(`--skip ${beyond}: the file has ${lines === 1 ? '1 line' : `${lines} lines`}`);
  const parted = tableText(text, columns, { registry, skipped, ...(delimiter && { delimiter }) });
  if (parted.ok) return parted.value;
  throw refusedBy(
    parted.problems.map((found) => withRemedy(found, columns)),
    path,
  );
}
