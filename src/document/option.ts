/** An option as options are compared, which is how formulas compare texts: composed, cases and outer spaces aside. */
export function foldedOption(option: string): string {
  // Upper case first, so that letters with two small forms (ß, ς) fold together.
  return option.normalize('NFC').toUpperCase().toLowerCase().normalize('NFC').trim();
}
