const MOST_LINES = 1_000_000;

/** The lines of a text that `1-3, 14` says, counted from 1; nothing where it says none. */
export function lineNumbers(said: string): readonly number[] | undefined {
  const ranges = said.split(',').map((part) => {
    const [, first, last] = /^\s*(\d{1,7})(?:\s*[-–]\s*(\d{1,7}))?\s*$/.exec(part) ?? [];
    const [from, to] = [Number(first), Number(last ?? first)];
    return first === undefined || from < 1 || to < from || to > MOST_LINES ? undefined : { from, to };
  });
  const known = ranges.filter((range) => range !== undefined);
  if (known.length < ranges.length) return undefined;
  return known.flatMap(({ from, to }) => Array.from({ length: to - from + 1 }, (_, at) => from + at));
}
