import { buildApp, serveApp } from '../browser/built-app.ts';
import { launchBrowser } from '../browser/launch.ts';
import { huntCommandLine } from './command-line.ts';
import { huntPage } from './page/hunt.ts';

// npm run hostile -- [--page] [--texts=20000] [--seed=1]: brings hostile texts to the command line, or to the built page
// in a browser, and prints each that did harm.
const option = (name: string, otherwise: number): number => {
  const given = process.argv.find((arg) => arg.startsWith(`--${name}=`));
  const value = given === undefined ? otherwise : Number(given.slice(name.length + 3));
  if (!Number.isInteger(value) || value < 1) throw new Error(`--${name} takes a whole number above 0`);
  return value;
};
const inPage = process.argv.includes('--page');
const [texts, seed] = [option('texts', inPage ? 2000 : 20_000), option('seed', 20_261_128)];
const print = (harm: unknown): void => console.log(JSON.stringify(harm));

console.log(`${texts} hostile texts through the ${inPage ? 'page' : 'command line'}, seed ${seed}`);
const harms = inPage ? await huntInBrowser() : await huntCommandLine(texts, seed, print);
console.log(`${harms.length} did harm`);
process.exit(harms.length > 0 ? 1 : 0);

async function huntInBrowser(): Promise<readonly unknown[]> {
  if (!process.argv.includes('--as-built')) buildApp();
  const app = await serveApp();
  const browser = await launchBrowser();
  try {
    const found = await huntPage(browser, app.address, texts, seed, print);
    for (const [door, count] of found.gone) console.log(`${String(count).padStart(6)}  ${door}`);
    console.log(`the longest task: ${found.longest.ms} ms, ${found.longest.from}`);
    return found.harms;
  } finally {
    await browser.close();
    await app.close();
  }
}
