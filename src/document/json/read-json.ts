import {
  type FactsOf,
  fail,
  type JsonValue,
  type Outcome,
  type Problem,
  problem,
  succeed,
} from '../../diagnostics/index.ts';
import { pathText } from './path.ts';

/** How long (in UTF-16 units) and how deeply nested a text may be before it is refused. */
export interface JsonLimits {
  readonly length: number;
  readonly depth: number;
}

// Keys through which a document could reach an object's prototype.
const FORBIDDEN_KEYS: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

const REFUSED = Symbol('refused');

type Read<T> = T | typeof REFUSED;

/** Where the reader stands; once something is refused, `refusal` says what and `path` is gathered on the way out. */
interface Reader {
  readonly text: string;
  readonly depthLimit: number;
  at: number;
  depth: number;
  path: (string | number)[];
  refusal: ((path: string) => Problem) | undefined;
}

/**
 * Reads JSON (RFC 8259) that nobody vouches for. Beyond what the standard refuses, so are texts over the limits,
 * keys said twice in one object, the keys `__proto__`, `constructor` and `prototype`, and numbers too large for a
 * float64. Never throws, however deep the text. The problem tells the line, the column and the path.
 */
export function readJson(text: string, limits: JsonLimits): Outcome<JsonValue> {
  if (text.length > limits.length) {
    return fail(problem('book-too-large', { from: 0, to: 0 }, { length: text.length, limit: limits.length }));
  }
  const reader: Reader = {
    text,
    depthLimit: limits.depth,
    at: text.startsWith('\ufeff') ? 1 : 0,
    depth: 0,
    path: [],
    refusal: undefined,
  };
  const value = readValue(reader);
  skipSpace(reader);
  if (value !== REFUSED && reader.at === text.length) return succeed(value);
  if (value !== REFUSED) refuse(reader, 'the end of the text');
  const refusal = reader.refusal;
  if (refusal === undefined) throw new Error('a refusal without a reason');
  return fail(refusal(pathText(reader.path)));
}

function readValue(reader: Reader): Read<JsonValue> {
  skipSpace(reader);
  const { text, at } = reader;
  switch (text[at]) {
    case '{':
      return nested(reader, readObject);
    case '[':
      return nested(reader, readList);
    case '"':
      return readText(reader);
    case 't':
      return readWord(reader, 'true', true);
    case 'f':
      return readWord(reader, 'false', false);
    case 'n':
      return readWord(reader, 'null', null);
    default:
      return readNumber(reader);
  }
}

function nested(reader: Reader, read: (reader: Reader) => Read<JsonValue>): Read<JsonValue> {
  if (reader.depth === reader.depthLimit) {
    return refuseWith(reader, 'book-too-deep', { limit: reader.depthLimit });
  }
  reader.depth++;
  const value = read(reader);
  reader.depth--;
  return value;
}

function readObject(reader: Reader): Read<JsonValue> {
  const object: Record<string, JsonValue> = {};
  reader.at++;
  skipSpace(reader);
  if (take(reader, '}')) return object;
  for (;;) {
    skipSpace(reader);
    if (reader.text[reader.at] !== '"') return refuse(reader, 'a key in double quotes');
    const start = reader.at;
    const key = readText(reader);
    if (key === REFUSED) return REFUSED;
    if (FORBIDDEN_KEYS.has(key)) return refuseKey(reader, 'book-key-forbidden', key, start);
    if (Object.hasOwn(object, key)) return refuseKey(reader, 'book-key-twice', key, start);
    skipSpace(reader);
    if (!take(reader, ':')) return refuse(reader, 'a colon');
    const value = readValue(reader);
    if (value === REFUSED) {
      reader.path.unshift(key);
      return REFUSED;
    }
    object[key] = value;
    skipSpace(reader);
    if (take(reader, '}')) return object;
    if (!take(reader, ',')) return refuse(reader, 'a comma or }');
  }
}

function readList(reader: Reader): Read<JsonValue> {
  const list: JsonValue[] = [];
  reader.at++;
  skipSpace(reader);
  if (take(reader, ']')) return list;
  for (;;) {
    const value = readValue(reader);
    if (value === REFUSED) {
      reader.path.unshift(list.length);
      return REFUSED;
    }
    list.push(value);
    skipSpace(reader);
    if (take(reader, ']')) return list;
    if (!take(reader, ',')) return refuse(reader, 'a comma or ]');
  }
}

const ESCAPES: Readonly<Record<string, string>> = {
  '"': '"',
  '\\': '\\',
  '/': '/',
  b: '\b',
  f: '\f',
  n: '\n',
  r: '\r',
  t: '\t',
};

function readText(reader: Reader): Read<string> {
  const { text } = reader;
  let done = '';
  let from = reader.at + 1;
  for (let at = from; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 0x22) {
      reader.at = at + 1;
      return done + text.slice(from, at);
    }
    if (code < 0x20) {
      reader.at = at;
      return refuse(reader, 'an escape in place of a control character');
    }
    if (code !== 0x5c) continue;
    const letter = text[at + 1] ?? '';
    const digits = letter === 'u' ? text.slice(at + 2, at + 6) : '';
    const plain = /^[0-9a-fA-F]{4}$/.test(digits)
      ? String.fromCharCode(Number.parseInt(digits, 16))
      : ESCAPES[letter];
    if (plain === undefined) {
      reader.at = at;
      return refuse(reader, 'an escape that JSON has');
    }
    done += text.slice(from, at) + plain;
    at += 1 + digits.length;
    from = at + 1;
  }
  reader.at = text.length;
  return refuse(reader, 'a closing double quote');
}

function readWord<T extends JsonValue>(reader: Reader, word: string, value: T): Read<T> {
  if (!reader.text.startsWith(word, reader.at)) return refuse(reader, 'a value');
  reader.at += word.length;
  return value;
}

function readNumber(reader: Reader): Read<number> {
  const pattern = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
  pattern.lastIndex = reader.at;
  const written = pattern.exec(reader.text)?.[0];
  if (written === undefined) return refuse(reader, 'a value');
  // Adding zero makes -0 the 0 it will be written as.
  const value = Number(written) + 0;
  if (!Number.isFinite(value)) return refuse(reader, 'a number that fits a float64');
  reader.at += written.length;
  return value;
}

function skipSpace(reader: Reader): void {
  const { text } = reader;
  let { at } = reader;
  for (let code = text.charCodeAt(at); isSpace(code); code = text.charCodeAt(at)) at++;
  reader.at = at;
}

function isSpace(code: number): boolean {
  return code === 0x20 || code === 0x0a || code === 0x0d || code === 0x09;
}

function take(reader: Reader, character: string): boolean {
  if (reader.text[reader.at] !== character) return false;
  reader.at++;
  return true;
}

function refuse(reader: Reader, expected: string): typeof REFUSED {
  return refuseWith(reader, 'book-not-json', { expected });
}

function refuseKey(
  reader: Reader,
  code: 'book-key-forbidden' | 'book-key-twice',
  key: string,
  at: number,
): typeof REFUSED {
  reader.at = at;
  return refuseWith(reader, code, { key });
}

type JsonCode = 'book-not-json' | 'book-too-deep' | 'book-key-forbidden' | 'book-key-twice';

function refuseWith<C extends JsonCode>(
  reader: Reader,
  code: C,
  facts: Omit<FactsOf<C>, 'path' | 'line' | 'column'>,
): typeof REFUSED {
  const place = lineAndColumn(reader.text, reader.at);
  reader.refusal = (path) =>
    problem(code, { from: 0, to: 0 }, { ...facts, path, ...place } as unknown as FactsOf<C>);
  return REFUSED;
}

function lineAndColumn(text: string, at: number): { line: number; column: number } {
  const before = text.slice(0, at);
  const lineStart = before.lastIndexOf('\n') + 1;
  return { line: before.split('\n').length, column: at - lineStart + 1 };
}
