/**
 * How much working is printed: *review* has what is entered, the results, the checks that apply and the working of those
 * that govern; *brief* has each line's formula, value and reference, and the numbers put in where a check governs; *full*
 * has them on every line.
 */
export type Working = 'review' | 'brief' | 'full';
