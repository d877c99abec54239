import type { readTable } from '../../src/tables/index.ts';

/** The lines and the readings of the cells of a text that may be one number. */
export function splitsOf(read: ReturnType<typeof readTable>) {
  return read.ok
    ? []
    : read.problems.flatMap(({ code, data }) => (code === 'cells-split' ? [[data.line, data.joined]] : []));
}
