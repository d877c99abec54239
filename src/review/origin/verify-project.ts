import { fail, type Outcome, problem, succeed } from '../../diagnostics/index.ts';
import {
  applyEdit,
  type Book,
  type Case,
  type Cases,
  hashBook,
  type Sheet,
  type Start,
  startOf,
  startWithIds,
} from '../../document/index.ts';
import {
  itemId,
  type Notebook,
  namesAtStart,
  namesInOrigin,
  openNotebook,
  referencesOfItem,
} from '../../notebook/index.ts';
import { caseEdit } from '../cases/prepare-case.ts';
import { type CaseReport, caseRunner, notRun } from '../cases/verify-template.ts';
import { caseSpeller } from './case-in-project.ts';
import { withoutExample } from './case-on-sheets.ts';
import { idOfDifference, type OriginDifference, originsOf, type SheetOrigin } from './differences.ts';
import { withEntriesOf } from './with-entries.ts';

const NOWHERE = { from: 0, to: 0 };

/** A case of the template as it went with the project's own formulas. */
export interface ProjectCase {
  readonly report: CaseReport;
  /** What the project computes otherwise and the results that do not agree rest on, by id; what is gone as it was called. */
  readonly through: readonly string[];
}

/** How a project stands beside a template that its sheets came from, as that is shipped now. */
export interface ProjectOrigin {
  /** Its sheets that came from the template, with what differs. */
  readonly sheets: readonly SheetOrigin[];
  /** Sheets of the template that it has not. */
  readonly without: readonly Sheet[];
}

/** The same with all its cases. */
export interface ProjectReport extends ProjectOrigin {
  readonly cases: readonly ProjectCase[];
}

/** The ids of the templates that sheets of a book came from, what most came from first; none where none did. */
export function templatesOf({ about, sheets }: Book): readonly string[] {
  const counts = new Map<string, number>();
  for (const { start } of sheets)
    if (start?.template !== undefined) counts.set(start.template, (counts.get(start.template) ?? 0) + 1);
  if (counts.size > 0) return [...counts].sort(([, a], [, b]) => b - a).map(([id]) => id);
  // A book of the time before sheets knew where they came from says it of itself.
  return about?.id === undefined ? [] : [about.id];
}

/** How a project stands beside a template. */
export function projectOrigin(template: Book, id: string, project: Book): ProjectOrigin {
  const sheets = originsOf(besideTemplate(template, id, project));
  return { sheets, without: sheetsLacking(template, id, project) };
}

/** The sheets of a template that a project has not: deleted since, or never brought. */
export function sheetsLacking(template: Book, id: string, project: Book): readonly Sheet[] {
  const keys = new Set(project.sheets.map((sheet) => keyInTemplate(sheet, id, project)));
  return template.sheets.filter(({ key }) => !keys.has(key));
}

/**
 * What a sheet of a project is called in a template, if it came from it. A book of the time before sheets knew where they came
 * from has those of the same keys.
 */
function keyInTemplate({ key, start }: Sheet, id: string, { sheets }: Book): string | undefined {
  if (start) return start.template === id ? start.key : undefined;
  return sheets.some((sheet) => sheet.start?.template === id) ? undefined : key;
}

/** A project whose sheets know the template as it is shipped now, whatever it was when they came; other sheets know nothing. */
function besideTemplate(template: Book, id: string, project: Book): Book {
  const content = hashBook(template);
  const source = { template: id, title: '', version: '' };
  const came = new Set<string>();
  const sheets = project.sheets.map((sheet): Sheet => {
    const { start, ...own } = sheet;
    const from = keyInTemplate(sheet, id, project);
    const like = template.sheets.find(({ key }) => key === from);
    // Of two sheets that came from one, the cases are run on the first.
    if (!like || came.has(like.key)) return own;
    came.add(like.key);
    const now = startOf(like, source, content);
    return { ...own, start: start?.template === id ? withIdsOf(now, start) : now };
  });
  return { ...project, sheets };
}

/** A sheet as the template has it now, its lines under the identities that they have in the project. */
function withIdsOf(now: Start, was: Start): Start {
  const ids = new Map([...namesAtStart(was).values()].map((part) => [part.id, itemId(part)]));
  const called = new Map([...namesAtStart(now).values()].map((part) => [itemId(part), part.id]));
  const idFor = (id: string): string | undefined => ids.get(called.get(id) ?? '');
  return { ...startWithIds(now, idFor), ...(was.held && { held: was.held }) };
}

/** What lines of a template are otherwise as it is shipped now than they were when the sheets of a project came from it. */
export function changedSince(template: Book, id: string, project: Book): readonly OriginDifference[] {
  const content = hashBook(template);
  const source = { template: id, title: '', version: '' };
  const sheets = new Map<string, Sheet>();
  for (const { start } of project.sheets) {
    const like = template.sheets.find(({ key }) => key === start?.key);
    if (start?.template !== id || start.content === content || !like || sheets.has(start.key)) continue;
    const { key, parts } = start;
    sheets.set(key, { key, title: '', parts, start: withIdsOf(startOf(like, source, content), start) });
  }
  return originsOf({ ...project, sheets: [...sheets.values()] }).flatMap(({ differences }) => differences);
}

/** Runs the cases of a template on a project one by one. */
export interface ProjectRun extends ProjectOrigin {
  readonly run: (example: Case) => ProjectCase;
}

/**
 * The cases of a template on the formulas of a project that came from it: with the template's entries wherever a case enters
 * nothing, for those of the project are its own affair.
 */
export function projectRun(template: Book, id: string, project: Book): ProjectRun {
  const beside = besideTemplate(template, id, project);
  const origin = { sheets: originsOf(beside), without: sheetsLacking(template, id, project) };
  const grafted = withEntriesOf(template, beside);
  const notebook = openNotebook(grafted);
  const called = namesInOrigin(beside, hashBook(template));
  const spell = caseSpeller(template, called);
  const others = origin.sheets.flatMap(({ differences }) => differences).filter(isComputedOtherwise);
  const run = caseRunner(notebook);
  const restsOn = groundsIn(openNotebook(grafted));
  const restedOn = groundsIn(openNotebook(template));
  const throughOf = (report: CaseReport): readonly string[] => {
    const wrong = report.judgements.filter(({ agrees }) => !agrees);
    const now = new Set(wrong.flatMap(({ id: result }) => [...restsOn(result)]));
    const then = new Set(wrong.flatMap(({ id: result }) => [...restedOn(called.get(result) ?? result)]));
    return others.flatMap((one) =>
      (one.is ? now.has(one.is.id) : then.has(one.was?.id ?? '')) ? [idOfDifference(one)] : [],
    );
  };
  return {
    ...origin,
    run: (example) => {
      const spelled = spell(example);
      if (!spelled.ok)
        return {
          report: notRun(example, `${spelled.lacks} of the template is not in the book`),
          through: others.flatMap((one) =>
            !one.is && one.was?.id === spelled.lacks ? [idOfDifference(one)] : [],
          ),
        };
      const report = run(spelled.example);
      return { report, through: throughOf(report) };
    },
  };
}

/** A project with the inputs of a case, and the template's entries for the rest; or why they cannot be entered. */
export function enteredInProject(template: Book, id: string, project: Book, example: Case): Outcome<Book> {
  // Of another case on the sheets nothing stays, also where that is one of another template.
  const beside = besideTemplate(template, id, withoutExample(project));
  const grafted = withEntriesOf(template, beside);
  const spelled = caseSpeller(template, namesInOrigin(beside, hashBook(template)))(example);
  if (!spelled.ok) return fail(problem('case-lacks-line', NOWHERE, { name: spelled.lacks }));
  const edit = caseEdit(grafted, spelled.example);
  if (!edit.ok) return edit;
  const applied = applyEdit(grafted, edit.value);
  return applied.ok ? succeed(applied.value.book) : applied;
}

/** Runs all cases of a template on a project. */
export function verifyProject(template: Book, project: Book, cases: Cases): ProjectReport {
  const { run, ...origin } = projectRun(template, cases.template, project);
  return { ...origin, cases: cases.cases.map(run) };
}

function isComputedOtherwise({ fields }: OriginDifference): boolean {
  return fields.some(({ computes }) => computes);
}

/** All that a line or column of a book names, at any distance, itself among it; found once for each. */
function groundsIn({ model }: Notebook): (id: string) => ReadonlySet<string> {
  const known = new Map<string, ReadonlySet<string>>();
  return (id) => {
    const found = known.get(id);
    if (found) return found;
    const reached = new Set([id]);
    for (const one of reached) {
      const item = model.items.get(one);
      if (!item || !('checked' in item)) continue;
      for (const next of referencesOfItem(item)) reached.add(next);
      if (item.methods?.byId !== undefined) reached.add(item.methods.byId);
    }
    known.set(id, reached);
    return reached;
  };
}
