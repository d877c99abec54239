import { type TemplateReport, verifyTemplate } from '../../review/index.ts';
import { chosenTemplates, templateBook, templateCases } from '../books.ts';
import { AGREES, type Command, DISAGREES } from '../command.ts';
import { readOptions } from '../options.ts';

/** `quaybook verify`: run the published cases of the shipped templates. */
export const verify: Command = {
  name: 'verify',
  usage: 'verify [TEMPLATE]... [--json]',
  help: 'runs the published cases of the shipped templates',
  run: (args, output) => {
    const options = readOptions('verify', args, { json: 'alone' });
    const reports = chosenTemplates(options.positionals).map(
      (id) => [id, verifyTemplate(templateBook(id), templateCases(id))] as const,
    );
    if (options.alone('json')) {
      const templates = Object.fromEntries(reports.map(([id, report]) => [id, counts(report)]));
      output.print(JSON.stringify({ templates }, null, 2));
    } else for (const [id, report] of reports) output.print(summary(id, report));
    for (const [id, report] of reports) for (const line of complaints(id, report)) output.complain(line);
    return reports.every(([, report]) => complaints('', report).length === 0) ? AGREES : DISAGREES;
  },
};

function counts(report: TemplateReport) {
  const ofKind = (kind: string): number => report.cases.filter((one) => one.kind === kind).length;
  return {
    cases: report.cases.length,
    failed: report.cases.filter((one) => !one.agrees).length,
    results: report.results.length,
    covered: report.results.length - report.uncovered.length,
    published: ofKind('published'),
    memory: ofKind('memory'),
    independent: ofKind('independent'),
  };
}

function summary(id: string, report: TemplateReport): string {
  const { cases, failed, results, covered, published, memory, independent } = counts(report);
  return (
    `${id}: ${cases - failed} of ${cases} cases agree (${published} published, ${memory} from memory, ` +
    `${independent} independent); ${covered} of ${results} results covered`
  );
}

function complaints(id: string, report: TemplateReport): readonly string[] {
  const wrong = report.cases.flatMap((one) => {
    if (one.refused !== undefined) return [`${id} ${one.id}: ${one.refused}`];
    return one.judgements.filter((found) => !found.agrees).map((found) => `${id} ${one.id}: ${found.words}`);
  });
  return [...wrong, ...report.uncovered.map((result) => `${id}: no case covers ${result}`)];
}
