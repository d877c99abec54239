/**
 * "1 check holds", "3 checks hold", with the verb in the number of what is counted: "0 of 1 check holds", "1 of 3 checks
 * hold".
 */
export function countedDo(count: number, word: string, verb: string): string {
  return `${countWords(count, word)} ${verb}${count === 1 ? 's' : ''}`;
}

/** "1 problem", "2 problems". */
export function countWords(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}
