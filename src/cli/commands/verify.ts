import { existsSync } from 'node:fs';
import { type Notebook, openNotebook } from '../../notebook/index.ts';
import { SOURCE_KINDS, sourcesOf, statedLines } from '../../record/index.ts';
import { STATED_EXACTLY, type TemplateReport, verifyTemplate } from '../../review/index.ts';
import { chosenTemplates, templateBook, templateCases, templateIds } from '../books.ts';
import { AGREES, type Command, DISAGREES } from '../command.ts';
import { type Head, headLines, headOf } from '../head.ts';
import { readOptions } from '../options.ts';
import { printedCase } from '../printed-case.ts';
import { printStated } from '../results.ts';
import { verifyBook } from '../verify-book.ts';

const tolerance =
  'each value’s own: half a unit of its last printed digit, or a part of it with the reason (at most 1 %); ' +
  `${STATED_EXACTLY} of the value where none is stated`;

/** `quaybook verify`: run the cases of the shipped templates. */
export const verify: Command = {
  name: 'verify',
  usage: 'verify [TEMPLATE | BOOK]... [--sources] [--json]',
  help:
    'runs the cases of the shipped templates: published examples, values from memory, independent routes; ' +
    '--json lists each with its source, what is expected and what is obtained; ' +
    '--sources lists every reference by its kind and how many results rest on it; ' +
    'of a BOOK whose sheets came from templates, its own formulas with the cases of these, and what it computes otherwise',
  run: (args, output) => {
    const options = readOptions('verify', args, { json: 'alone', sources: 'alone' });
    const [name] = options.positionals;
    if (name !== undefined && !templateIds().includes(name) && existsSync(name))
      return verifyBook(options.positionals, options.alone('json'), output);
    const reports = chosenTemplates(options.positionals).map((id): Verified => {
      const book = templateBook(id);
      const report = verifyTemplate(book, templateCases(id));
      return { id, head: headOf(id, book), report, notebook: openNotebook(book) };
    });
    const withSources = options.alone('sources');
    if (options.alone('json')) {
      const templates = Object.fromEntries(
        reports.map((one) => [
          one.id,
          { ...printed(one), ...(withSources && { sources: sourcesOf(one.notebook) }) },
        ]),
      );
      output.print(JSON.stringify({ templates }, null, 2));
    } else
      for (const { head, report, notebook } of reports) {
        const stated = statedLines(notebook).map((line) => `stated     ${line}`);
        output.print(
          [
            ...headLines(head, tolerance),
            `cases      ${summary(report)}`,
            ...stated,
            ...(withSources ? sourceLines(notebook) : []),
            '',
          ].join('\n'),
        );
      }
    for (const { id, report } of reports)
      for (const line of complaints(report)) output.complain(`${id}${line}`);
    return reports.every(({ report }) => complaints(report).length === 0) ? AGREES : DISAGREES;
  },
};

interface Verified {
  readonly id: string;
  readonly head: Head;
  readonly report: TemplateReport;
  readonly notebook: Notebook;
}

function printed({ head, report, notebook }: Verified) {
  const stated = printStated(notebook);
  return { ...head, tolerance, ...counts(report), stated, case_list: report.cases.map(printedCase) };
}

function counts(report: TemplateReport) {
  const ofKind = (kind: string): number => report.cases.filter((one) => one.kind === kind).length;
  return {
    cases: report.cases.length,
    failed: report.cases.filter((one) => !one.agrees).length,
    results: report.results.length,
    covered: report.results.length - report.uncovered.length,
    checks: report.checks.length,
    seen_failing: report.checks.length - report.neverFailing.length,
    seen_holding: report.checks.length - report.neverHolding.length,
    published: ofKind('published'),
    memory: ofKind('memory'),
    independent: ofKind('independent'),
  };
}

function summary(report: TemplateReport): string {
  const { cases, failed, results, covered, published, memory, independent, ...seen } = counts(report);
  const { checks, seen_failing: failing, seen_holding: holding } = seen;
  return (
    `${cases - failed} of ${cases} agree; ${published} of the ${cases} are published examples, ` +
    `${memory} from memory, ${independent} by independent routes; ${covered} of ${results} results covered; ` +
    `checks seen failing ${failing} of ${checks}, seen holding ${holding} of ${checks}`
  );
}

/** Every reference, the weakest kinds first: how many results rest on it, how many lines have it, and its words. */
function sourceLines(notebook: Notebook): readonly string[] {
  const sources = sourcesOf(notebook);
  return SOURCE_KINDS.flatMap((kind) => {
    const own = sources.filter((one) => one.kind === kind);
    if (own.length === 0) return [];
    return [
      `sources    ${kind}: ${own.length}`,
      ...own.map(
        ({ reference, results, lines }) =>
          `${String(results).padStart(8)} rest on ${reference || 'what has no reference'} (lines: ${lines.length})`,
      ),
    ];
  });
}

function complaints(report: TemplateReport): readonly string[] {
  const wrong = report.cases.flatMap((one) => {
    if (one.refused !== undefined) return [` ${one.id}: ${one.refused}`];
    return one.judgements.filter((found) => !found.agrees).map((found) => ` ${one.id}: ${found.words}`);
  });
  return [...wrong, ...report.uncovered.map((result) => `: no case covers ${result}`)];
}
