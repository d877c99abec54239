/** Signs that steer a terminal, or turn the direction of what stands around them, line ends and tabs apart. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is sought.
const STEERING = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u200e\u200f\u2028-\u202e\u2066-\u2069]/g;

/**
 * A text with the signs that would steer a terminal written out as `\u001b`: texts of a book or of an argument come from
 * anybody. In JSON it means the same.
 */
export function visible(text: string): string {
  return text.replace(STEERING, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`);
}
