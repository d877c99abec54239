export { type Comparison, type Judgement, STATED_EXACTLY } from './cases/judge.ts';
export { type MutationReport, mutateTemplate } from './cases/mutate-template.ts';
export { type CaseReport, type TemplateReport, verifyTemplate } from './cases/verify-template.ts';
export type { Change } from './checking/bases.ts';
export { stateInWords } from './checking/book-state.ts';
export {
  type Checked,
  type Checking,
  type CheckState,
  checkedAt,
  checkingOf,
  coverageOf,
  type Orphan,
} from './checking/checking.ts';
export {
  answerComment,
  closeComment,
  enterHandValue,
  markSeen,
  raiseComment,
  type Said,
  setOwnTolerance,
  setTolerance,
  takeOff,
} from './checking/edits.ts';
export {
  type HandVerdict,
  judgeHandValue,
  toleranceOf,
  toleranceProblem,
  USUAL_TOLERANCE,
} from './checking/judge-hand-value.ts';
export { keyOfStep, type Step, type StepTo, stepsTo } from './checking/steps.ts';
export { findSubject } from './checking/subjects.ts';
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
export { sameValue } from './compare/values.ts';
export { putCaseEdit, takeCaseBackEdit } from './origin/case-on-sheets.ts';
export {
  idOfDifference,
  type OriginDifference,
  type OtherField,
  originsOf,
  type SheetOrigin,
} from './origin/differences.ts';
export { formulasSaid } from './origin/formulas-said.ts';
export {
  changedSince,
  enteredInProject,
  type ProjectCase,
  type ProjectOrigin,
  type ProjectReport,
  type ProjectRun,
  projectOrigin,
  projectRun,
  sheetsLacking,
  templatesOf,
  verifyProject,
} from './origin/verify-project.ts';
export { bookOfRevision, issueRevision } from './signing/revisions.ts';
export {
  type CasesRun,
  openAtSigning,
  type SecondEngine,
  type SignatureStanding,
  signaturesOf,
  signOff,
  withdrawSignature,
} from './signing/sign-off.ts';
