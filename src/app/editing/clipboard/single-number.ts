/** A whole number, maybe with one sign between its thousands, and maybe decimals behind another one. */
const NUMBER = String.raw`(?:\d{1,3}(?:([.,'’\u00a0\u2009\u202f ])\d{3}(?:\1\d{3})*)(?:(?!\1)[.,]\d+)?|\d+(?:[.,]\d+)?)`;

const SINGLE = new RegExp(String.raw`^[-+−]?${NUMBER}(?:\s*[^\s\d.,;|"][^,;|"\t\n]*)?$`, 'u');

/**
 * Whether a text is one number and maybe its unit: `7,5`, `1,250 cy`. A comma in it parts no cells, whatever else it
 * may mean.
 */
export function isSingleNumber(text: string): boolean {
  return SINGLE.test(text.trim());
}
