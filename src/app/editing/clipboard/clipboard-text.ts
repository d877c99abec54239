/** The type under which cells travel between pages of Quaybook, beside plain text for all other programs. */
export const CELLS_TYPE = 'application/x-quaybook-cells+json';

/** Cells as tab-separated text; a cell with tabs, line ends or quotes stands in quotes, as spreadsheets have it. */
export function writeCells(cells: readonly (readonly string[])[]): string {
  const quoted = (cell: string): string =>
    /[\t\r\n"]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
  return cells.map((row) => row.map(quoted).join('\t')).join('\n');
}

/** Tab-separated text, as spreadsheets copy it, as rows of cells. A last line end makes no row. */
export function readCells(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [[]];
  let at = 0;
  while (at <= text.length) {
    const { cell, end } = cellAt(text, at);
    rows.at(-1)?.push(cell);
    const stop = text[end];
    if (stop === undefined) break;
    const next = stop === '\r' && text[end + 1] === '\n' ? end + 2 : end + 1;
    if (stop !== '\t') {
      if (next >= text.length) break;
      rows.push([]);
    }
    at = next;
  }
  return rows;
}

function cellAt(text: string, from: number): { readonly cell: string; readonly end: number } {
  if (text[from] === '"') {
    const quoted = /"((?:[^"]|"")*)"(?=[\t\r\n]|$)/y;
    quoted.lastIndex = from;
    const found = quoted.exec(text);
    if (found) return { cell: (found[1] ?? '').replaceAll('""', '"'), end: quoted.lastIndex };
  }
  const plain = /[^\t\r\n]*/y;
  plain.lastIndex = from;
  const [cell = ''] = plain.exec(text) ?? [];
  return { cell, end: from + cell.length };
}
