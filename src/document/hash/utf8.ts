/**
 * The UTF-8 bytes of a text. Half of a surrogate pair, which UTF-8 cannot hold, becomes U+FFFD; canonical JSON has
 * none (it writes them as escapes).
 */
export function utf8Bytes(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length * 3);
  let length = 0;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    if (unit < 0x80) {
      bytes[length++] = unit;
      continue;
    }
    const point = codePoint(text, i, unit);
    if (point >= 0x10000) {
      i++;
      bytes[length++] = 0xf0 | (point >> 18);
      bytes[length++] = 0x80 | ((point >> 12) & 0x3f);
    } else if (point >= 0x800) {
      bytes[length++] = 0xe0 | (point >> 12);
    }
    bytes[length++] = point >= 0x800 ? 0x80 | ((point >> 6) & 0x3f) : 0xc0 | (point >> 6);
    bytes[length++] = 0x80 | (point & 0x3f);
  }
  return bytes.subarray(0, length);
}

function codePoint(text: string, i: number, unit: number): number {
  if (unit < 0xd800 || unit > 0xdfff) return unit;
  const next = text.charCodeAt(i + 1);
  const paired = unit < 0xdc00 && next >= 0xdc00 && next <= 0xdfff;
  return paired ? 0x10000 + ((unit - 0xd800) << 10) + (next - 0xdc00) : 0xfffd;
}
