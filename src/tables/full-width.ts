/** Marks of the direction of writing and of no width, which stand around numbers unseen. */
const UNSEEN = /[\u200b\u200e\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]/g;

/** Signs of full width, as some keyboards write them, as the ordinary ones, and none that cannot be seen. */
export function ordinarySigns(written: string): string {
  const text = written.replace(UNSEEN, '');
  return /[\uff01-\uff5e]/.test(text)
    ? text.replace(/[\uff01-\uff5e]/g, (sign) => String.fromCharCode(sign.charCodeAt(0) - 0xfee0))
    : text;
}
