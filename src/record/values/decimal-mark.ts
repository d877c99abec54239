/** A number as it is set, without a power of ten: what stands behind its decimal mark is its tail. */
const PLAIN = /^[−+]?[\d\u202f]+(\.\d*)?$/;

/** The most a number takes with what keeps it in its column; with more, large numbers beside small ones would not fit. */
const MOST_CHARACTERS = 9;

/**
 * What stands unseen behind numbers that are set at the right, so that their decimal marks stand below one another: ".00"
 * behind 12 where another is 3.25. Nothing behind what is no plain number, and behind none of them where one would get too wide.
 */
export function behindNumbers(numbers: readonly string[]): readonly string[] {
  const tails = numbers.map((number) => PLAIN.exec(number)?.[1] ?? (PLAIN.test(number) ? '' : undefined));
  const longest = Math.max(0, ...tails.map((tail) => tail?.length ?? 0));
  const behind = tails.map((tail) => {
    if (tail === undefined || tail.length === longest) return '';
    return tail === '' ? `.${'0'.repeat(longest - 1)}` : '0'.repeat(longest - tail.length);
  });
  const isTooWide = numbers.some(
    (number, at) => behind[at] !== '' && number.length + (behind[at]?.length ?? 0) > MOST_CHARACTERS,
  );
  return isTooWide ? numbers.map(() => '') : behind;
}
