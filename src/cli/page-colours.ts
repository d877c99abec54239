import { readFileSync } from 'node:fs';

/** The page's colours, light and dark, as the style sheet has them: a picture in a file of its own takes them along. */
export function pageColours(): string {
  return readFileSync(new URL('../../src/app/style/tokens.css', import.meta.url), 'utf8');
}
