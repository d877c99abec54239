import { languagePage } from './language-page.ts';
import { problemsPage } from './problems-page.ts';
import { templatesPage } from './templates-page.ts';
import { unitsPage } from './units-page.ts';

/** The generated pages of `docs/`, each from one table of the program. */
export const pages: Readonly<Record<string, () => string>> = {
  'language.md': languagePage,
  'units.md': unitsPage,
  'problems.md': problemsPage,
  'templates.md': templatesPage,
};
