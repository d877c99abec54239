export { RECHECK_TOLERANCE } from './agreement.ts';
export type { Grid, GridCell, GridLabel, GridPlace, GridSheet } from './grid.ts';
export { type LoweredBook, lowerBook } from './lower/book.ts';
export type * from './program.ts';
export type { RecheckProgress } from './progress.ts';
export { recheck } from './recheck.ts';
export {
  notRecheckedWords,
  RECHECK_LIMITS,
  type RecheckFinding,
  type RecheckReport,
  reportLines,
} from './report.ts';
export { tooLarge } from './too-large.ts';
