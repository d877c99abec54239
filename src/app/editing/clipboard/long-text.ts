/** From so many characters on reading a text takes longer than a key may wait. */
const LONG = 200_000;

/** Whether a text is so long that it is read beside the page, and not shown whole. */
export function isLongText(text: string): boolean {
  return text.length >= LONG;
}
