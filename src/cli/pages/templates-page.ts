import { openNotebook } from '../../notebook/index.ts';
import { verifyTemplate } from '../../review/index.ts';
import { templateBook, templateCases, templateIds } from '../books.ts';
import { generated, table } from './markdown.ts';

const list = (items: readonly string[]): string => items.map((item) => `- ${item}`).join('\n');

/** Every shipped template: what it is for, its limits, its cautions, and the cases it is checked by. */
export function templatesPage(): string {
  const sections = templateIds().map((id) => {
    const book = templateBook(id);
    const cases = templateCases(id);
    const report = verifyTemplate(book, cases);
    const about = book.about;
    const size = openNotebook(book).model.items.size;
    const rows = cases.cases.map((one) => [one.id, one.title, one.kind]);
    const sheets = book.sheets.map(({ key, title }) => `\`${key}\` ${title}`).join('; ');
    return `## \`${id}\`: ${book.title.subject}

*${about?.question ?? ''}*

${about?.purpose ?? ''}

**Standard.** ${about?.standard ?? ''}

**Scope.** ${about?.scope ?? ''}

**Sheets.** ${sheets}. ${size} lines and columns, ${report.results.length} of them results, each covered by a case.

**Limits**

${list(about?.limits ?? [])}

**Cautions**

${list(about?.cautions ?? [])}

**Assumptions**

${list(about?.assumptions ?? [])}

### Cases

${table(['case', 'what', 'kind'], rows)}`;
  });
  return `# Templates

${generated}

\`published\` cases were read in their source, \`memory\` cases are values remembered from it, \`independent\` ones are
worked out by another route that runs no code of this program. The source of each, with edition and page, stands beside
it in \`templates/<id>/cases.json\`. Run them with \`quaybook verify\`; with \`--json\` it lists each case with its source, what
is expected and what is obtained.

${sections.join('\n\n')}
`;
}
