import { buildApp, serveApp } from './built-app.ts';
import { killBrowser } from './kills/kill-browser.ts';
import { seededRandom } from './kills/seeded-random.ts';

const rounds = Number(process.argv[2] ?? 200);
const seed = Number(process.argv[3] ?? 20261128);

console.log(`${rounds} ends of the browser, seed ${seed}`);
buildApp();
const app = await serveApp();
const counts = await killBrowser(app.address, rounds, seededRandom(seed), (text) => console.log(text));
await app.close();
for (const { ending, ...count } of counts)
  console.log(
    `${ending}: ${count.rounds} times, ${count.edits} edits, ${count.kept} called kept, ${count.lost} of these lost; last edit not found ${count.lastLost} times`,
  );
process.exitCode = counts.some(({ lost }) => lost > 0) ? 1 : 0;
process.exit();
