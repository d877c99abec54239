import { type Problem, renderProblem } from '../../diagnostics/index.ts';
import type { Book, Case, Cases } from '../../document/index.ts';
import { enterInTurn, type Notebook, openNotebook } from '../../notebook/index.ts';
import { computationsOf } from './computations.ts';
import { type Judgement, judge } from './judge.ts';
import { caseEdit } from './prepare-case.ts';

/** One case as it went. */
export interface CaseReport {
  readonly id: string;
  readonly title: string;
  readonly kind: Case['kind'];
  readonly source: string;
  /** How many entries and table cells it enters; the template's own stand for the rest. */
  readonly inputs: number;
  readonly agrees: boolean;
  readonly judgements: readonly Judgement[];
  /** Why its inputs could not be entered. */
  readonly refused?: string;
}

/** The cases of a template and what they cover. */
export interface TemplateReport {
  readonly cases: readonly CaseReport[];
  /** Every calculated line, column and check of the template, those with methods once for each. */
  readonly results: readonly string[];
  /** Those no agreeing expectation looks at. */
  readonly uncovered: readonly string[];
  /** Every check of the template. */
  readonly checks: readonly string[];
  /** Those no case sees failing, and those none sees holding, where that is what it expects. */
  readonly neverFailing: readonly string[];
  readonly neverHolding: readonly string[];
}

/** Runs every case of a template. */
export function verifyTemplate(book: Book, cases: Cases): TemplateReport {
  const notebook = openNotebook(book);
  const results = computationsOf(notebook).map(({ name }) => name);
  const checks = [...notebook.model.items.values()].flatMap((item) =>
    item.kind === 'formula' && item.row.kind === 'check' ? [item.id] : [],
  );
  const run = caseRunner(notebook);
  const reports = cases.cases.map(run);
  const covered = new Set(
    reports.flatMap((report) =>
      report.judgements.filter((one) => one.agrees && one.covers).map((one) => one.computation),
    ),
  );
  return {
    cases: reports,
    results,
    uncovered: results.filter((id) => !covered.has(id)),
    checks,
    neverFailing: checks.filter((id) => !isSeen(reports, id, 'fails')),
    neverHolding: checks.filter((id) => !isSeen(reports, id, 'holds')),
  };
}

/** Runs one case after the other on the book of a notebook, each with that book's entries wherever it enters nothing. */
export function caseRunner(notebook: Notebook): (example: Case) => CaseReport {
  const { book } = notebook;
  const enter = enterInTurn(notebook);
  return (example) => {
    const edit = caseEdit(book, example);
    const entered = edit.ok ? enter(edit.value) : edit;
    return entered.ok ? runCase(notebook, example) : refusedCase(example, entered.problems);
  };
}

/** Whether a case expects the check, agrees with it, and it stands so there. */
function isSeen(reports: readonly CaseReport[], id: string, stands: 'holds' | 'fails'): boolean {
  return reports.some(({ judgements }) =>
    judgements.some((one) => one.id === id && one.agrees && one.covers && one.stands === stands),
  );
}

/** Judges one case whose inputs are entered. */
function runCase(notebook: Notebook, example: Case): CaseReport {
  const judgements = example.expect.map((expected) => judge(notebook, expected));
  return { ...aboutCase(example), agrees: judgements.every((one) => one.agrees), judgements };
}

/** A case whose inputs cannot be entered. */
function refusedCase(example: Case, problems: readonly Problem[]): CaseReport {
  const refused = problems.map((found) => renderProblem(found)).join('; ');
  return notRun(example, refused);
}

/** A case that was not run, and why. */
export function notRun(example: Case, refused: string): CaseReport {
  return { ...aboutCase(example), agrees: false, judgements: [], refused };
}

function aboutCase(example: Case): Pick<CaseReport, 'id' | 'title' | 'kind' | 'source' | 'inputs'> {
  const { id, title, kind, source } = example;
  return { id, title, kind, source, inputs: inputsOf(example) };
}

function inputsOf({ set = {}, tables = {} }: Case): number {
  const cells = Object.values(tables)
    .flat()
    .flatMap((row) => Object.values(row));
  return Object.keys(set).length + cells.length;
}
