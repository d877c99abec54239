import { describe, expect, test } from 'vitest';
import { readDecoded, readTextFile } from '../../../src/app/storage/read-text-file.ts';
import { decodeText } from '../../../src/tables/index.ts';

const decode = (bytes: Uint8Array) =>
  decodeText(bytes, (encoding, all) => new TextDecoder(encoding, { fatal: true }).decode(all));

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

  test('is read in the encoding that is found, and refused where none is', async () => {
    const western = new Blob([new Uint8Array([0x4b, 0xfc, 0x73, 0x74, 0x65, 0x20, 0xb2])]);
    expect(await readDecoded(western, 100, decode)).toMatchObject({
      value: { text: 'Küste ²', encoding: 'windows-1252', problems: [{ code: 'table-encoding-guessed' }] },
    });
    const wide = new Blob([new Uint8Array([0xff, 0xfe, 0x41, 0, 0x3b, 0])]);
    expect(await readDecoded(wide, 100, decode)).toMatchObject({ value: { text: 'A;', problems: [] } });
    const archive = new Blob([new Uint8Array([0x50, 0x4b, 3, 4, 0, 0, 0, 8, 0, 0x81])]);
    expect(await readDecoded(archive, 100, decode)).toMatchObject({
      problems: [{ code: 'file-not-utf-8' }],
    });
  });
});
