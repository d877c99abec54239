import type { Book, Cases } from '../../document/index.ts';
import { openNotebook, referencesOfItem } from '../../notebook/index.ts';
import { type CaseReport, verifyTemplate } from '../cases/verify-template.ts';
import { type ChangedFormula, changedFormulas } from './changed-formulas.ts';
import { withEntriesOf } from './with-entries.ts';

/** A case of the template as it went with the project's own formulas. */
export interface ProjectCase {
  readonly report: CaseReport;
  /** What the project computes otherwise and the results that do not agree rest on, by id. */
  readonly through: readonly string[];
}

/** How a project stands beside the template it was started from. */
export interface ProjectReport {
  /** What it computes otherwise. */
  readonly changed: readonly ChangedFormula[];
  /** Sheets of the template that it has not, by key. */
  readonly without: readonly string[];
  readonly cases: readonly ProjectCase[];
}

/**
 * Runs the cases of a template on the formulas of a project that was started from it: with the template's entries wherever a
 * case enters nothing, for those of the project are its own affair.
 */
export function verifyProject(template: Book, project: Book, cases: Cases): ProjectReport {
  const changed = changedFormulas(template, project);
  const keys = new Set(project.sheets.map(({ key }) => key));
  const without = template.sheets.flatMap(({ key }) => (keys.has(key) ? [] : [key]));
  const grafted = withEntriesOf(template, project);
  const restsOn = groundsIn(grafted);
  const others = new Set(changed.map(({ id }) => id));
  const reports = verifyTemplate(grafted, cases).cases.map((report): ProjectCase => {
    const wrong = report.judgements.filter(({ agrees }) => !agrees);
    const grounds = new Set(wrong.flatMap(({ id }) => [...restsOn(id)]));
    return { report, through: [...others].filter((id) => grounds.has(id)) };
  });
  return { changed, without, cases: reports };
}

/** All that a line or column of a book names, at any distance, itself among it. */
function groundsIn(book: Book): (id: string) => ReadonlySet<string> {
  const { model } = openNotebook(book);
  return (id) => {
    const reached = new Set([id]);
    for (const one of reached) {
      const item = model.items.get(one);
      if (!item || !('checked' in item)) continue;
      for (const next of referencesOfItem(item)) reached.add(next);
      if (item.methods?.byId !== undefined) reached.add(item.methods.byId);
    }
    return reached;
  };
}
