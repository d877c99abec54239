import { templateIds } from '../books.ts';
import { languagePage } from './language-page.ts';
import { problemsPage } from './problems-page.ts';
import { templatePicture } from './template-picture.ts';
import { templatesPage } from './templates-page.ts';
import { unitsPage } from './units-page.ts';

/** The generated files of the project, by path: each page from one table of the program, each picture from a template. */
export const pages: Readonly<Record<string, () => string>> = {
  'docs/language.md': languagePage,
  'docs/units.md': unitsPage,
  'docs/problems.md': problemsPage,
  'docs/templates.md': templatesPage,
  ...Object.fromEntries(
    templateIds().map((id) => [`templates/${id}/picture.svg`, () => templatePicture(id)] as const),
  ),
};
