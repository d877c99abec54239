/** An option as options are compared, which is how formulas compare texts: composed, cases and outer spaces aside. */
export function foldedOption(option: string): string {
  if (plain.test(option)) return option.toLowerCase().trim();
  // Upper case first, so that letters with two small forms (ß, ς) fold together.
  return option.normalize('NFC').toUpperCase().toLowerCase().normalize('NFC').trim();
}

/** Letters that are composed and have one small form each. */
const plain = /^[ -~]*$/;
