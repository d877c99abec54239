import type { LRParser } from '@lezer/lr';

/** The parser generated from `formula.grammar`. */
export declare const parser: LRParser;
