import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openBook } from '../../src/document/index.ts';
import { PROGRAM_VERSION, writeRecord } from '../../src/record/index.ts';
import { quaybook, quaybookJson } from './run-quaybook.ts';

const folder = mkdtempSync(join(tmpdir(), 'record-'));
const fender = 'templates/fender-energy/book.quaybook.json';

test('record writes what the page writes, and every command reads it as the book', () => {
  const out = join(folder, 'fender.html');
  expect(quaybook('record', fender, '--out', out)).toEqual({
    status: 0,
    out: `the record is in ${out}\n`,
    err: '',
  });
  const opened = openBook(readFileSync(fender, 'utf8'));
  if (!opened.ok) throw new Error('the template does not open');
  const program = `Quaybook ${PROGRAM_VERSION}`;
  const text = readFileSync(out, 'utf8');
  expect(text).toBe(writeRecord({ book: opened.value.book, program, recheck: [] }));
  expect(quaybookJson('calc', out).json).toEqual(quaybookJson('calc', fender).json);
  expect(quaybook('compare', fender, out).status).toBe(0);
  const again = join(folder, 'again.html');
  expect(quaybook('record', out, '--out', again).status).toBe(0);
  expect(readFileSync(again, 'utf8')).toBe(text);
});

test.each([
  [['record'], 'record takes one BOOK: a file or a template’s id'],
  [['record', fender], 'record wants --out FILE.html, the file that it writes'],
  [['record', fender, '--out', fender], `${fender} is the book itself; name another file for its record`],
  [
    ['record', fender, '--out', join(folder, 'no', 'x.html')],
    `${join(folder, 'no', 'x.html')} cannot be written (there is no such folder)`,
  ],
])('%j is refused', (args, words) => {
  expect(quaybook(...args)).toEqual({ status: 2, out: '', err: `${words}\n` });
});

test('a damaged record is refused in a sentence', () => {
  const out = join(folder, 'whole.html');
  quaybook('record', fender, '--out', out);
  const cut = join(folder, 'cut.html');
  writeFileSync(cut, readFileSync(out, 'utf8').slice(0, -1000));
  const run = quaybook('calc', cut);
  expect(run.status).toBe(2);
  expect(run.err).toContain('the record is damaged: its book is not as it was written');
});

test('the version is that of the package', () => {
  const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
  expect(PROGRAM_VERSION).toBe(version);
});
