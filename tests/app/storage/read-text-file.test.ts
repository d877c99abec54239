import { describe, expect, test } from 'vitest';
import { readTextFile } from '../../../src/app/storage/read-text-file.ts';

describe('the text of a file', () => {
  test('is read as UTF-8, without its mark', async () => {
    expect(await readTextFile(new Blob(['\uFEFFκ = 1']), 100)).toEqual({ ok: true, value: 'κ = 1' });
  });

  test('file-too-large: a size beyond the limit is refused before anything is read', async () => {
    let read = false;
    const file = {
      size: 600_000_001,
      arrayBuffer: () => {
        read = true;
        return Promise.resolve(new ArrayBuffer(0));
      },
    };
    expect(await readTextFile(file as Blob, 300_000_000)).toMatchObject({
      ok: false,
      problems: [{ code: 'file-too-large', message: 'the file has 601 MB, and at most 300 MB are read' }],
    });
    expect(read).toBe(false);
  });

  test('file-not-utf-8: other encodings are refused, not guessed', async () => {
    expect(await readTextFile(new Blob([new Uint8Array([0x4b, 0xfc, 0x73])]), 100)).toMatchObject({
      ok: false,
      problems: [{ code: 'file-not-utf-8', message: 'the file is not UTF-8 text' }],
    });
  });
});
