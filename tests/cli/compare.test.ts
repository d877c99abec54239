import { describe, expect, test } from 'vitest';
import { type Book, blankBook, type Part, writeBook } from '../../src/document/index.ts';
import { quaybook, quaybookJson } from './run-quaybook.ts';
import { beam, fileOf } from './small-book.ts';

const bookWith = (parts: readonly Part[], revision: string): Book => ({
  ...blankBook(),
  title: { ...blankBook().title, project: 'East quay', revision },
  sheets: [{ key: 's', title: 'Beam', parts }],
});
const textOf = (book: Book): string => writeBook(book);
const old = fileOf('old.quaybook.json', textOf(bookWith(beam, 'A')));
const wider = JSON.parse(textOf(bookWith(beam, 'B')).replace('12 in', '18 in'));
const next = fileOf('new.quaybook.json', JSON.stringify(wider));

describe('compare', () => {
  test('a book and itself: nothing is different, and the status is 0', () => {
    const { status, out } = quaybook('compare', old, old);
    expect(status).toBe(0);
    expect(out.trim().split('\n').at(-1)).toBe('nothing is different');
    expect(quaybookJson('compare', old, old).json.differences).toEqual([]);
  });

  test('names both books, and lists what changed, then what followed, and the status is 1', () => {
    const { status, out } = quaybook('compare', old, next);
    expect(status).toBe(1);
    expect(out).toMatch(
      /^old +\S*old\.quaybook\.json\ntitle +East quay\nrevision +A\ncontent +sha256 [0-9a-f]{64}$/m,
    );
    expect(out).toMatch(
      /^new +\S*new\.quaybook\.json\ntitle +East quay\nrevision +B\ncontent +sha256 [0-9a-f]{64}$/m,
    );
    // 12 in by 24 in are 2 ft², 18 in by 24 in 3 ft²: more than 2.5 ft².
    expect(out.slice(out.indexOf('changed 2'))).toBe(
      [
        'changed 2, followed 2',
        'Title block and settings',
        '  revision: “A” → “B”',
        'Sheet s, Beam',
        '  changed',
        '    s.b: entry “12 in” → “18 in” (+6 in, +50.0 %)',
        '  followed',
        '    check s.c: holds, 80 % → FAILS, 120 %; demand 2 ft^2 → 3 ft^2; from s.b (entry)',
        '    s.A: 2 ft^2 → 3 ft^2 (+1 ft^2, +50.0 %); from s.b (entry)',
        '',
      ].join('\n'),
    );
  });

  test('the same as data: values in their units, rows and positions from 1', () => {
    const { run, json } = quaybookJson('compare', old, next);
    expect(run.status).toBe(1);
    expect(json.old).toMatchObject({ book: old, revision: 'A' });
    expect(json.new.hash).not.toBe(json.old.hash);
    const area = json.differences.find(
      (one: { kind: string; subject?: { after?: { id: string } } }) =>
        one.kind === 'result' && one.subject?.after?.id === 's.A',
    );
    expect(area).toEqual({
      kind: 'result',
      subject: {
        kind: 'line',
        before: { sheet: 's', id: 's.A', label: '', part: 'p', position: 4 },
        after: { sheet: 's', id: 's.A', label: '', part: 'p', position: 4 },
      },
      from: { status: 'ok', value: 2, unit: 'ft^2', text: '2 ft^2' },
      to: { status: 'ok', value: 3, unit: 'ft^2', text: '3 ft^2' },
      size: { absolute: 1, unit: 'ft^2', relative: expect.closeTo(0.5, 12) },
      causes: {
        list: [
          {
            subject: {
              kind: 'line',
              before: { sheet: 's', id: 's.b', label: '', part: 'p', position: 1 },
              after: { sheet: 's', id: 's.b', label: '', part: 'p', position: 1 },
            },
            by: ['entry'],
          },
        ],
      },
    });
    const turned = json.differences.find((one: { kind: string }) => one.kind === 'check');
    expect(turned).toMatchObject({ turned: true, from: { stands: 'holds' }, to: { stands: 'fails' } });
  });

  test('other identities alone are no difference, and it is said that the files differ', () => {
    const other = fileOf('ids.quaybook.json', textOf(bookWith(beam, 'A')).replace('"id": "b"', '"id": "b9"'));
    const { status, out } = quaybook('compare', old, other);
    expect(status).toBe(0);
    expect(out).toContain('nothing is different but the identities');
  });

  test('refuses one book, three, and what is no book', () => {
    for (const args of [[old], [old, next, old]]) {
      const { status, err } = quaybook('compare', ...args);
      expect(status).toBe(2);
      expect(err).toContain('compare takes two books, OLD and NEW');
    }
    const { run, json } = quaybookJson('compare', old, fileOf('none.quaybook.json', '{}'));
    expect(run.status).toBe(2);
    expect(json.refused).toContain('none.quaybook.json');
  });
});
