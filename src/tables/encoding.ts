/** The encodings of texts that are read, by their names in the WHATWG Encoding standard. */
export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/** How much of a text is looked at for the zero bytes that only UTF-16 has. */
const SAMPLE = 4096;

/** Bytes to which Windows-1252 gives no character. */
const UNUSED = new Set([0x81, 0x8d, 0x8f, 0x90, 0x9d]);

/**
 * The encoding of a text: by its mark; else UTF-16 where every other byte is zero, as Western text has it; UTF-8 where
 * it is that; else Windows-1252. Nothing if it is no text: zero bytes in odd places, or bytes that mean nothing.
 */
export function encodingOf(bytes: Uint8Array): Encoding | undefined {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return bytes.length % 2 === 0 ? 'utf-16le' : undefined;
  if (first === 0xfe && second === 0xff) return bytes.length % 2 === 0 ? 'utf-16be' : undefined;
  const zeros = [0, 0];
  const sample = bytes.subarray(0, SAMPLE);
  for (const [at, byte] of sample.entries()) if (byte === 0) zeros[at % 2] = (zeros[at % 2] ?? 0) + 1;
  const [even = 0, odd = 0] = zeros;
  if (even + odd > 0) {
    const half = sample.length / 2;
    if (bytes.length % 2 === 0 && even === 0 && odd > half * 0.7) return 'utf-16le';
    if (bytes.length % 2 === 0 && odd === 0 && even > half * 0.7) return 'utf-16be';
    return undefined;
  }
  if (isUtf8(bytes)) return bytes.includes(0) ? undefined : 'utf-8';
  return bytes.some((byte) => UNUSED.has(byte) || byte === 0) ? undefined : 'windows-1252';
}

/** Whether bytes are well-formed UTF-8 (RFC 3629, section 4). */
function isUtf8(bytes: Uint8Array): boolean {
  let at = 0;
  while (at < bytes.length) {
    const lead = bytes[at] ?? 0;
    const follow =
      lead < 0x80
        ? 0
        : lead >= 0xc2 && lead < 0xe0
          ? 1
          : (lead & 0xf0) === 0xe0
            ? 2
            : lead >= 0xf0 && lead < 0xf5
              ? 3
              : -1;
    if (follow < 0) return false;
    const second = bytes[at + 1] ?? 0;
    if (lead === 0xe0 && second < 0xa0) return false;
    if (lead === 0xed && second > 0x9f) return false;
    if (lead === 0xf0 && second < 0x90) return false;
    if (lead === 0xf4 && second > 0x8f) return false;
    for (let next = 1; next <= follow; next += 1) if (((bytes[at + next] ?? 0) & 0xc0) !== 0x80) return false;
    at += follow + 1;
  }
  return true;
}
