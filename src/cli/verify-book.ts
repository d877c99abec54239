import { fieldsTold, otherwiseWords } from '../record/index.ts';
import {
  idOfDifference,
  type OriginDifference,
  type ProjectReport,
  templatesOf,
  verifyProject,
} from '../review/index.ts';
import { readBook, templateBook, templateCases, templateIds } from './books.ts';
import { AGREES, DISAGREES, type Output } from './command.ts';
import { headLines, headOf } from './head.ts';
import { printedCase } from './printed-case.ts';
import { Refused } from './refused.ts';

const tolerance = 'each value’s own, as its case states it';

/** Runs the cases of the templates that a book's sheets came from on the book's own formulas. */
export function verifyBook(names: readonly string[], json: boolean, output: Output): number {
  const [name = '', ...more] = names;
  if (more.length > 0) throw new Refused('verify takes one BOOK at a time, or ids of templates');
  const book = readBook(name);
  const said = templatesOf(book);
  const shipped = said.filter((id) => templateIds().includes(id));
  const unknown = said.filter((id) => !shipped.includes(id));
  if (shipped.length === 0)
    throw new Refused(
      `${name}: the book does not say that it was started from a template whose cases could be run${unknown.length === 0 ? '' : `, only from “${unknown.join('”, “')}”`}`,
    );
  const reports = shipped.map((id): Verified => {
    return { id, report: verifyProject(templateBook(id), book, templateCases(id)) };
  });
  const head = headOf(name, book);
  if (json) {
    const templates = reports.map(({ id, report: { without } }) => ({
      template: id,
      without: without.map(({ key }) => key),
    }));
    const changed = reports.flatMap(({ id, report }) =>
      report.sheets.flatMap(({ differences }) =>
        differences.map((one) => ({ template: id, ...printed(one) })),
      ),
    );
    const cases = reports.flatMap(({ id, report }) =>
      report.cases.map(({ report: one, through }) => ({
        template: id,
        ...printedCase(one),
        ...(through.length > 0 && { through }),
      })),
    );
    output.print(JSON.stringify({ ...head, tolerance, templates, unknown, changed, cases }, null, 2));
  } else
    output.print(
      [
        ...headLines(head, tolerance),
        ...unknown.map((id) => `template   ${id}, which is not shipped: none of its cases is run`),
        ...reports.flatMap(templateLines),
      ].join('\n'),
    );
  const lines = reports.flatMap(({ id, report }) =>
    complaints(report).map((line) => (reports.length === 1 ? line : `${id} ${line}`)),
  );
  for (const line of lines) output.complain(line);
  return lines.length === 0 ? AGREES : DISAGREES;
}

interface Verified {
  readonly id: string;
  readonly report: ProjectReport;
}

/** A template beside the book: how its cases went, and what of it is otherwise. */
function templateLines({ id, report: { sheets, without, cases } }: Verified): readonly string[] {
  const differing = sheets.flatMap(({ differences }) => differences);
  const agreeing = cases.filter(({ report }) => report.agrees).length;
  return [
    `template   ${id}, with its entries and the formulas of the book`,
    `cases      ${agreeing} of ${cases.length} agree`,
    `lines      ${differing.length === 0 ? 'as in the template' : `${differing.length} not as in the template`}`,
    ...differing.flatMap(differenceLines),
    ...without.map(
      ({ key, title }) =>
        `           sheet ${key}${title === '' ? '' : `, ${title},`} of the template is not in the book`,
    ),
  ];
}

function printed(one: OriginDifference) {
  const { what, was, is, fields } = one;
  const renamed = was && is && was.id !== is.id;
  return {
    id: idOfDifference(one),
    ...(renamed && { was: was.id }),
    what,
    words: otherwiseWords(one),
    fields: fields.map(({ field, was: old, is: now }) => ({
      field,
      ...(old !== undefined && { was: old }),
      ...(now !== undefined && { is: now }),
    })),
  };
}

/** A line that differs, and below it what it says otherwise. */
function differenceLines(one: OriginDifference): readonly string[] {
  const { was, is, what } = one;
  const called = was && is && was.id !== is.id ? `, ${was.id} in the template` : '';
  return [
    `           ${idOfDifference(one)}${called}: ${otherwiseWords(one)}`,
    ...fieldsTold(one).map(({ field, was: old, is: now }) => {
      if (what === 'changed') return `             ${field}: ${old ?? 'nothing'} → ${now ?? 'nothing'}`;
      return `             ${field}: ${old ?? now}`;
    }),
  ];
}

/** What no longer agrees, and through which changed lines. */
function complaints({ cases }: ProjectReport): readonly string[] {
  return cases.flatMap(({ report, through }) => {
    if (report.agrees) return [];
    const wrong = report.judgements.filter(({ agrees }) => !agrees);
    const names = [...new Set(wrong.map(({ id }) => id))];
    const what =
      report.refused ??
      `${names.slice(0, 6).join(', ')}${names.length > 6 ? ` and ${names.length - 6} more` : ''}`;
    return [`${report.id}: ${what}${through.length === 0 ? '' : `; through ${through.join(', ')}`}`];
  });
}
