export { type Comparison, type Judgement, STATED_EXACTLY } from './cases/judge.ts';
export { type MutationReport, mutateTemplate } from './cases/mutate-template.ts';
export { type CaseReport, type TemplateReport, verifyTemplate } from './cases/verify-template.ts';
export { compareBooks } from './compare/compare-books.ts';
export type {
  BookComparison,
  Cause,
  Causes,
  CheckStanding,
  Difference,
  Place,
  RowCell,
  RowMatching,
  RowValues,
  Size,
  Subject,
} from './compare/difference.ts';
