import { writeFileSync } from 'node:fs';
import { pages } from './pages/pages.ts';

/** `npm run docs`: write the files that are generated from the program's own tables and templates. */
for (const [path, write] of Object.entries(pages)) {
  writeFileSync(new URL(`../../${path}`, import.meta.url), write());
  console.log(path);
}
