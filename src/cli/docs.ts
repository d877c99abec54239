import { writeFileSync } from 'node:fs';
import { pages } from './pages/pages.ts';

/** `npm run docs`: write the pages that are generated from the program's own tables. */
for (const [name, write] of Object.entries(pages)) {
  const path = new URL(`../../docs/${name}`, import.meta.url);
  writeFileSync(path, write());
  console.log(`docs/${name}`);
}
