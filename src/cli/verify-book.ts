import { type ProjectReport, verifyProject } from '../review/index.ts';
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
  const id = book.about?.id;
  if (id === undefined || !templateIds().includes(id))
    throw new Refused(
      `${name}: the book does not say that it was started from a template whose cases could be run${id === undefined ? '' : `, only from “${id}”`}`,
    );
  const report = verifyProject(templateBook(id), book, templateCases(id));
  const head = headOf(name, book);
  const lines = complaints(report);
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
    const { changed, without } = report;
    output.print(JSON.stringify({ ...head, tolerance, template: id, changed, without, cases }, null, 2));
  } else {
    const { changed } = report;
    output.print(
      [
        ...headLines(head, tolerance),
        `template   ${id}, with its entries and the formulas of the book`,
        `cases      ${agreeing} of ${report.cases.length} agree`,
        `formulas   ${changed.length === 0 ? 'as in the template' : `${new Set(changed.map(({ id: one }) => one)).size} otherwise than in the template`}`,
        ...changed.map(changedLine),
        ...report.without.map((key) => `           sheet ${key} of the template is not in the book`),
      ].join('\n'),
    );
  }
  for (const line of lines) output.complain(line);
  return lines.length === 0 ? AGREES : DISAGREES;
}

function changedLine({ id, what, part, was, is }: ProjectReport['changed'][number]): string {
  const of = part === 'formula' ? id : `${id}, ${part}`;
  if (what === 'gone') return `           ${of} is gone: ${was}`;
  if (what === 'added') return `           ${of} is added: ${is}`;
  return `           ${of}: ${was ?? 'nothing'} → ${is ?? 'nothing'}`;
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
