import { rm } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { buildApp, serveApp } from './built-app.ts';
import { launchBrowser } from './launch.ts';
import { guidePictures } from './screens/guide-pictures.ts';
import { screens } from './screens/screens.ts';
import { takeAll, type Variant } from './screens/take.ts';

// npm run screens -- [--guide] [--as-built] [WORD]...
// Writes a picture of every screen to screens/, or with --guide those of the guide to docs/pictures/. --as-built takes
// dist/app as it stands; words keep those screens whose names hold one of them.
const folder = (fromHere: string) => fileURLToPath(new URL(fromHere, import.meta.url));
const args = process.argv.slice(2);
const words = args.filter((arg) => !arg.startsWith('--'));
const guide = args.includes('--guide');

const variants: readonly Variant[] = [
  { name: '1440-light', width: 1440 },
  { name: '1440-dark', width: 1440, dark: true },
  { name: '1024-light', width: 1024 },
  { name: '1024-dark', width: 1024, dark: true },
  { name: '1440-forced-colors', width: 1440, forcedColors: true },
  { name: '1024-touch', width: 1024, height: 768, touch: true },
];
const chosen = (guide ? guidePictures : screens).filter(
  ({ name }) => words.length === 0 || words.some((word) => name.includes(word)),
);

if (!args.includes('--as-built')) buildApp();
const app = await serveApp();
const browser = await launchBrowser();
try {
  if (guide)
    await takeAll(
      browser,
      app.address,
      chosen,
      { name: '', width: 1200, format: 'webp' },
      folder('../../docs/pictures'),
    );
  else {
    if (words.length === 0) await rm(folder('../../screens'), { recursive: true, force: true });
    for (const variant of variants)
      await takeAll(browser, app.address, chosen, variant, folder(`../../screens/${variant.name}`));
  }
} finally {
  await browser.close();
  await app.close();
}
