/** A row of a Markdown table; what would end a cell is escaped. */
function tableRow(cells: readonly string[]): string {
  return `| ${cells.map((cell) => cell.replaceAll('|', '\\|').replaceAll('\n', ' ')).join(' | ')} |`;
}

/** A Markdown table. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  return [tableRow(head), tableRow(head.map(() => '---')), ...rows.map(tableRow)].join('\n');
}

/** Text set as code; a text with backticks in it keeps them. */
export function code(text: string): string {
  return text.includes('`') ? `\`\` ${text} \`\`` : `\`${text}\``;
}

/** The line that every generated page begins with, after its title. */
export const generated = 'This page is generated from the program by `npm run docs`.';
