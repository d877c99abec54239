/**
 * How much working is printed: *brief* has each line's formula, value and reference, and the numbers put in where a check
 * governs; *full* has them on every line.
 */
export type Working = 'brief' | 'full';
