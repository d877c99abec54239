import { expect, test } from 'vitest';
import { problem } from '../../src/diagnostics/index.ts';
import { openCopied } from '../../src/document/index.ts';

const row = { id: 'r1', kind: 'given', name: 'L', entry: '4 m' };

test.each([
  [''],
  ['not json'],
  ['3'],
  ['{"cells":3}'],
  ['{"cells":[]}'],
  ['{"cells":[[]]}'],
  ['{"cells":[[1]]}'],
  ['{"cells":[{"toString":1}]}'],
  ['{"cells":["a"]}'],
  ['{"cells":[["a"]],"units":[[3]]}'],
  ['{"cells":[["a"]],"lines":[]}'],
  ['{"cells":[["a"]],"lines":[{}]}'],
  ['{"cells":[["a"]],"lines":["a"]}'],
  ['{"cells":[["a"]],"other":1}'],
  ['{"cells":[["a"]],"__proto__":{}}'],
  [JSON.stringify({ cells: [['a']], lines: [{ ...row, name: '4 L' }] })],
  [JSON.stringify({ cells: [['a']], lines: [{ ...row, entry: { text: 4 } }] })],
])('%s is no copied cells', (json) => {
  const read = openCopied(json);
  expect(read.ok).toBe(false);
  expect(read.ok ? '' : read.problems[0]?.message).not.toBe('');
});

test.each([
  [{ cells: [['a']] }],
  [
    {
      cells: [
        ['a', ''],
        ['2', '3'],
      ],
      units: [
        [null, 'm'],
        [null, 'm'],
      ],
      headed: true,
    },
  ],
  [{ cells: [['L', '4 m']], lines: [row], from: { book: 'b1', sheet: 'beam', cut: true } }],
])('%j is read', (copied) => {
  expect(openCopied(JSON.stringify(copied))).toEqual({ ok: true, value: copied });
});

test('a person is told why copied cells are not used', () => {
  const { message } = problem('copied-unsound', { from: 0, to: 0 }, { reason: 'cells is no list' });
  expect(message).toBe(
    'what was copied is not as Quaybook copies cells (cells is no list), so its plain text is used',
  );
});
