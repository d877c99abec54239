import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { version } from '../../package.json';
import { blankBook, writeBook } from '../../src/document/index.ts';
import { quaybook, quaybookJson } from './run-quaybook.ts';
import { beam, fileOf } from './small-book.ts';

const templates = new URL('../../templates/', import.meta.url);

interface FileCase {
  readonly id: string;
  readonly kind: string;
  readonly source: string;
  readonly set?: object;
  readonly tables?: Readonly<Record<string, readonly object[]>>;
  readonly expect: readonly { readonly name: string }[];
}

interface PrintedCase extends FileCase {
  readonly inputs: number;
  readonly agrees: boolean;
  readonly values: readonly {
    readonly name: string;
    readonly row?: number;
    readonly expected: number | string | boolean;
    readonly obtained: number | string | boolean | null;
    readonly difference?: number;
    readonly unit?: string;
    readonly tolerance?: number;
    readonly must_differ?: boolean;
    readonly agrees: boolean;
  }[];
}

/** The cases as their file has them. */
function fileCases(id: string): readonly FileCase[] {
  return JSON.parse(readFileSync(new URL(`${id}/cases.json`, templates), 'utf8')).cases;
}

/** JSON with its keys in order, made here without the program. */
function ordered(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(ordered).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const fields = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${fields.map(([key, item]) => `${JSON.stringify(key)}:${ordered(item)}`).join(',')}}`;
}

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

/** The content hash of a book's file, by the system's SHA-256: chunks within parts within the book, the review apart. */
function hashOfFile(text: string): string {
  const { format: _, version: __, review: ___, ...book } = JSON.parse(text);
  for (const sheet of book.sheets)
    sheet.parts = sheet.parts.map((part: { columns?: { chunks?: unknown[] }[] }) => {
      for (const column of part.columns ?? [])
        if (column.chunks) column.chunks = column.chunks.map((chunk) => sha256(ordered(chunk)));
      return sha256(ordered(part));
    });
  return sha256(ordered(book));
}

// Two templates are verified once each way; that all agree is tested beside them.
const some = ['debris-haul', 'fender-energy'];
const verified = quaybookJson('verify', ...some);
const verifiedText = quaybook('verify', ...some).out;

describe('verify', () => {
  test('counts cases and coverage, and says how many are published', () => {
    const cases = fileCases('fender-energy');
    const of = (kind: string): number => cases.filter((one) => one.kind === kind).length;
    const { run, json } = verified;
    expect(run.status).toBe(0);
    const found = json.templates['fender-energy'];
    expect(found).toMatchObject({
      cases: cases.length,
      failed: 0,
      published: of('published'),
      memory: of('memory'),
      independent: of('independent'),
    });
    expect(found.covered).toBe(found.results);
    expect(verifiedText).toContain(
      `${cases.length} of ${cases.length} agree; ${of('published')} of the ${cases.length} are published examples, ` +
        `${of('memory')} from memory, ${of('independent')} by independent routes`,
    );
    expect(quaybook('verify', '--help').out).not.toContain('runs the published cases');
  });

  test('heads each template with book, title, revision, content hash, program and tolerance', () => {
    const out = verifiedText;
    for (const id of ['fender-energy', 'debris-haul']) {
      const text = readFileSync(new URL(`${id}/book.quaybook.json`, templates), 'utf8');
      expect(out).toMatch(new RegExp(`^book +${id}$`, 'm'));
      expect(out).toContain(JSON.parse(text).title.subject);
      expect(out).toContain(`sha256 ${hashOfFile(text)}`);
    }
    expect(out).toMatch(/^revision +none stated$/m);
    expect(out).toMatch(new RegExp(`^program +Quaybook ${version.replaceAll('.', '\\.')}$`, 'm'));
    expect(out).toMatch(/^tolerance +each value’s own: half a unit of its last printed digit/m);
  });

  test('lists each case with its source, what is expected and obtained, and how near they must be', () => {
    const { json } = verified;
    expect(Object.keys(json.templates)).toEqual(some);
    for (const id of some) {
      const wanted = fileCases(id);
      const listed: readonly PrintedCase[] = json.templates[id].case_list;
      expect(listed.map((one) => [one.id, one.kind, one.source])).toEqual(
        wanted.map((one) => [one.id, one.kind, one.source]),
      );
      for (const [at, one] of listed.entries()) {
        const file = wanted[at];
        const cells = Object.values(file?.tables ?? {}).flatMap((rows) =>
          rows.flatMap((row) => Object.keys(row)),
        );
        expect(one.inputs, one.id).toBe(Object.keys(file?.set ?? {}).length + cells.length);
        expect(one.agrees).toBe(true);
        expect([...new Set(one.values.map(({ name }) => name))]).toEqual([
          ...new Set(file?.expect.map(({ name }) => name)),
        ]);
        for (const value of one.values) {
          const { expected, obtained, tolerance, unit, must_differ } = value;
          if (typeof expected !== 'number') {
            expect(obtained).toBe(expected);
            expect(value).not.toHaveProperty('difference');
          } else {
            expect(value.difference).toBe(Number(obtained) - expected);
            expect(unit, `${one.id} ${value.name}`).toBeDefined();
            const near = Math.abs(Number(obtained) - expected) <= Number(tolerance) * (1 + 1e-9);
            expect(near, `${one.id} ${value.name}`).toBe(must_differ !== true);
          }
        }
      }
    }
  });

  test('a published value stands there as it was printed', () => {
    const { json } = verified;
    const listed: readonly PrintedCase[] = json.templates['fender-energy'].case_list;
    const energy = listed.find(({ id }) => id === 'W1')?.values.find(({ name }) => name === 'E_N');
    // E = ½ M v² C_M C_E C_S: 0.5 · 208000 t · (0.10 m/s)² · 1.543860 · 0.664269 · 0.9.
    expect(energy).toMatchObject({ expected: 960, unit: 'kN·m', tolerance: 0.5, agrees: true });
    const byHand = 0.5 * 208_000 * 0.01 * 1.5438596 * 0.6642691 * 0.9;
    expect(energy?.obtained).toBeCloseTo(byHand, 2);
    expect(energy?.difference).toBeCloseTo(byHand - 960, 2);
  });
});

describe('recheck', () => {
  test('finds no difference in a template', () => {
    const { run, json } = quaybookJson('recheck', 'fender-energy');
    expect(run.status).toBe(0);
    expect(json.findings).toEqual([]);
    expect(json.agree).toBeGreaterThan(150);
  });

  const title = { ...blankBook().title, project: 'East quay', subject: 'Beam', revision: 'B' };
  const text = writeBook({ ...blankBook(), title, sheets: [{ key: 's', title: 'Sheet', parts: beam }] });
  const file = fileOf('headed.quaybook.json', text);

  test('says at its head which book in which state, which program and which tolerance', () => {
    const { out } = quaybook('recheck', file);
    expect(out.split('\n').slice(0, 6)).toEqual([
      `book       ${file}`,
      'title      East quay, Beam',
      'revision   B',
      `content    sha256 ${hashOfFile(text)}`,
      `program    Quaybook ${version}`,
      'tolerance  1e-9 of the value, or 1e-12 of the sum of the magnitudes for what is left of a balance',
    ]);
    expect(quaybookJson('recheck', file).json).toMatchObject({
      book: file,
      title: 'East quay, Beam',
      revision: 'B',
      hash: hashOfFile(text),
      program: `Quaybook ${version}`,
    });
  });

  test('the hash is of the content: it changes with a value, not with the layout of the file', () => {
    const hash = (path: string): string => quaybookJson('recheck', path).json.hash;
    const compact = fileOf('compact.quaybook.json', JSON.stringify(JSON.parse(text)));
    const other = fileOf('other.quaybook.json', text.replace('12 in', '13 in'));
    expect(hash(compact)).toBe(hash(file));
    expect(hash(other)).not.toBe(hash(file));
  });
});
