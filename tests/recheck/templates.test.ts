import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { openBook } from '../../src/document/index.ts';
import { functionTable } from '../../src/language/index.ts';
import { openNotebook, recheckProgram } from '../../src/notebook/index.ts';
import { recheck, reportLines } from '../../src/recheck/index.ts';

const folder = fileURLToPath(new URL('../../templates/', import.meta.url));

/** The only reasons there are to leave something out: a function says it has no lowering, texts are joined. */
const stated = [
  ...functionTable.flatMap(({ name, noRecheck }) =>
    noRecheck === undefined ? [] : [`${name}: ${noRecheck}`],
  ),
  'texts stand as codes in the recheck, and codes do not join',
];

test.each(readdirSync(folder))(
  '%s: the two engines agree on every value',
  { timeout: 240_000 },
  async (id) => {
    const opened = openBook(readFileSync(`${folder}${id}/book.quaybook.json`, 'utf8'));
    if (!opened.ok) throw new Error(opened.problems.map(({ message }) => message).join('\n'));
    const { program, values } = recheckProgram(openNotebook(opened.value.book));
    const report = await recheck(program, values);
    console.log(`recheck: ${id}: ${reportLines(report).join(' ')}`);
    expect(report.findings).toEqual([]);
    expect(report.agree).toBeGreaterThan(100);
    for (const { reason } of report.notRechecked) expect(stated).toContain(reason);
  },
);
