import { catalogueAreas } from '../../diagnostics/index.ts';
import { generated } from './markdown.ts';

const areas: Readonly<Record<keyof typeof catalogueAreas, string>> = {
  quantity: 'Quantities and units',
  syntax: 'How a formula is written',
  names: 'Names',
  types: 'Dimensions and kinds',
  values: 'Values',
  lines: 'Lines and cells',
  methods: 'Methods',
  tables: 'Tables',
  paste: 'Pasting',
  sheets: 'Sheets from other books',
  review: 'Hand values',
  book: 'Books',
};

/** Every problem Quaybook can tell of, by its code. */
export function problemsPage(): string {
  const sections = Object.entries(catalogueAreas).map(([area, codes]) => {
    const entries = Object.entries(codes).map(
      ([name, { title, explain }]: [string, { readonly title: string; readonly explain: string }]) =>
        `### \`${name}\`\n\n**${title}.** ${explain}`,
    );
    return `## ${areas[area as keyof typeof areas]}\n\n${entries.join('\n\n')}`;
  });
  return `# Problems\n\n${generated}\n\nEvery problem has a code that stays, a place, a sentence and where it can one remedy.\n\n${sections.join('\n\n')}\n`;
}
