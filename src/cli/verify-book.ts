import { fieldsTold, otherwiseWords } from '../record/index.ts';
import {
  idOfDifference,
  type OriginDifference,
  type ProjectReport,
  templateOf,
  verifyProject,
} from '../review/index.ts';
import { readBook, templateBook, templateCases, templateIds } from './books.ts';
import { AGREES, DISAGREES, type Output } from './command.ts';
import { headLines, headOf } from './head.ts';
import { Refused } from './refused.ts';

const tolerance = 'each value’s own, as its case states it';

/** Runs the cases of the template that a book was started from on the book's own formulas. */
export function verifyBook(names: readonly string[], json: boolean, output: Output): number {
  const [name = '', ...more] = names;
  if (more.length > 0) throw new Refused('verify takes one BOOK at a time, or ids of templates');
  const book = readBook(name);
  const id = templateOf(book);
  if (id === undefined || !templateIds().includes(id))
    throw new Refused(
      `${name}: the book does not say that it was started from a template whose cases could be run${id === undefined ? '' : `, only from “${id}”`}`,
    );
  const report = verifyProject(templateBook(id), book, templateCases(id));
  const head = headOf(name, book);
  const lines = complaints(report);
  const { without } = report;
  const differing = report.sheets.flatMap(({ differences }) => differences);
  const agreeing = report.cases.filter(({ report: one }) => one.agrees).length;
  if (json) {
    const cases = report.cases.map(({ report: { id: of, title, source, agrees, refused }, through }) => ({
      id: of,
      title,
      source,
      agrees,
      ...(refused !== undefined && { refused }),
      ...(through.length > 0 && { through }),
    }));
    const changed = differing.map(printed);
    output.print(JSON.stringify({ ...head, tolerance, template: id, changed, without, cases }, null, 2));
  } else
    output.print(
      [
        ...headLines(head, tolerance),
        `template   ${id}, with its entries and the formulas of the book`,
        `cases      ${agreeing} of ${report.cases.length} agree`,
        `lines      ${differing.length === 0 ? 'as in the template' : `${differing.length} not as in the template`}`,
        ...differing.flatMap(differenceLines),
        ...without.map((key) => `           sheet ${key} of the template is not in the book`),
      ].join('\n'),
    );
  for (const line of lines) output.complain(line);
  return lines.length === 0 ? AGREES : DISAGREES;
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
