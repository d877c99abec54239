import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { JsonValue } from '../../src/diagnostics/index.ts';
import { sha256 } from '../../src/document/hash/sha256.ts';
import { utf8Bytes } from '../../src/document/hash/utf8.ts';
import { canonicalJson } from '../../src/document/index.ts';
import { readJson } from '../../src/document/json/read-json.ts';

const bytesOf = (hex: string): Uint8Array => Uint8Array.from(Buffer.from(hex, 'hex'));

// FIPS 180-2, appendix B (B.1 to B.3); the short messages are of the NIST CAVP byte-oriented SHA-256 test vectors.
test.each([
  ['abc', Buffer.from('abc'), 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'two blocks',
    Buffer.from('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq'),
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
  [
    'a million',
    Buffer.alloc(1_000_000, 'a'),
    'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0',
  ],
  ['nothing', bytesOf(''), 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ['one byte', bytesOf('d3'), '28969cdfa74a12c82f3bad960b0b000aca2ac329deea5c2328ebc6f2ba9802c1'],
  ['four bytes', bytesOf('74ba2521'), 'b16aa56be3880d18cd41e68384cf1ec8c17680c45a02b1575dc1518923ae8b0e'],
])('SHA-256 of the published message %s', (_, message, digest) => {
  expect(sha256(message)).toBe(digest);
});

test('SHA-256 and UTF-8 agree with Node for texts of every length about a block', () => {
  for (let length = 0; length < 200; length++) {
    const text = 'aµ€𝄞'.repeat(50).slice(0, length);
    expect(sha256(utf8Bytes(text))).toBe(createHash('sha256').update(text, 'utf8').digest('hex'));
  }
});

test('any text becomes the bytes that Node makes of it', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      expect(Buffer.from(utf8Bytes(text))).toEqual(Buffer.from(text, 'utf8'));
    }),
    { seed: 20, numRuns: 500 },
  );
});

// RFC 8785, 3.2.2 to 3.2.4: numbers, texts, and the sorting of keys by UTF-16 units.
test.each<[string, JsonValue]>([
  [
    '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    {
      numbers: [Number('333333333.33333329'), 1e30, 4.5, 2e-3, 0.000000000000000000000000001],
      string: "€$\u000f\u000aA'\u0042\u0022\u005c\\\u0022/",
      literals: [null, true, false],
    },
  ],
  [
    '{"\\r":"Carriage Return","1":"One","\u0080":"Control","ö":"Latin Small Letter O With Diaeresis","€":"Euro Sign","😀":"Emoji: Grinning Face","\ufb33":"Hebrew Letter Dalet With Dagesh"}',
    {
      '€': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
      '😀': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      ö: 'Latin Small Letter O With Diaeresis',
    },
  ],
])('canonical JSON %s', (text, value) => {
  expect(canonicalJson(value)).toBe(text);
});

test('composed and decomposed letters stay as they are', () => {
  expect(canonicalJson(['\u00e9', 'e\u0301'])).toBe('["\u00e9","e\u0301"]');
});

test('a number JSON does not have is refused', () => {
  expect(() => canonicalJson([Number.NaN])).toThrow(RangeError);
});

const limits = { length: 1e6, depth: 32 };

function shuffled(value: JsonValue, order: readonly number[]): JsonValue {
  if (Array.isArray(value)) return value.map((item: JsonValue) => shuffled(item, order));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(
    ([key, item], i) => [order[i % order.length] ?? 0, key, item] as const,
  );
  return Object.fromEntries(
    entries.sort((a, b) => a[0] - b[0]).map(([, key, item]) => [key, shuffled(item, order)]),
  );
}

const json = fc.jsonValue({ maxDepth: 5 }).map((value) => JSON.parse(JSON.stringify(value)) as JsonValue);

test('canonical JSON does not depend on the order of keys, and reads back as the value', () => {
  fc.assert(
    fc.property(json, fc.array(fc.nat(100), { minLength: 1, maxLength: 9 }), (value, order) => {
      const text = canonicalJson(value);
      expect(canonicalJson(shuffled(value, order))).toBe(text);
      const read = readJson(text, limits);
      const forbidden = /"(__proto__|constructor|prototype)":/.test(text);
      expect(read.ok ? read.value : undefined).toEqual(forbidden ? undefined : value);
    }),
    { seed: 8785, numRuns: 1000 },
  );
});

test('the reader agrees with JSON.parse on sound and damaged texts', () => {
  let refused = 0;
  const damage = fc.record({
    at: fc.nat(),
    text: fc.constantFrom('', '"', '\\', ',', ']', '}', '0', '-', 'e', '\n', '{'),
  });
  fc.assert(
    fc.property(json, fc.option(damage), (value, hurt) => {
      let text = JSON.stringify(value, null, 1);
      if (hurt !== null) {
        const at = hurt.at % text.length;
        text = text.slice(0, at) + hurt.text + text.slice(at + 1);
      }
      const read = readJson(text, limits);
      // What this reader alone refuses: keys and numbers that JSON.parse takes.
      const { code, data } = read.ok ? { code: undefined, data: undefined } : read.problems[0]!;
      if (
        code !== undefined &&
        (code !== 'book-not-json' || data?.expected === 'a number that fits a float64')
      )
        return;
      let parsed: JsonValue | undefined;
      try {
        parsed = JSON.parse(text);
      } catch (error) {
        expect(error).toBeInstanceOf(SyntaxError);
        refused++;
      }
      expect(read.ok ? canonicalJson(read.value) : undefined).toBe(
        parsed === undefined ? undefined : canonicalJson(parsed),
      );
    }),
    { seed: 8259, numRuns: 3000 },
  );
  expect(refused).toBeGreaterThan(300);
});
