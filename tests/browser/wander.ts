import { buildApp, serveApp } from './built-app.ts';
import { launchBrowser } from './launch.ts';
import { failureWords } from './wander/figures.ts';
import { shrink, signOf } from './wander/shrink.ts';
import { type Failure, shippedBooks, walk } from './wander/walk.ts';

// npm run wander -- [--steps=5000] [--seed=1] [--length=100] [--book=1] [--as-built] [--whole]: walks over the shipped
// books without a plan, in turn and each from a seed of its own, and prints what it did and every difference it found.
// --book: over one of them alone, by its number in their list, as to walk again from a seed that was printed with it.
const option = (name: string, otherwise: number): number => {
  const given = process.argv.find((arg) => arg.startsWith(`--${name}=`));
  const value = given === undefined ? otherwise : Number(given.slice(name.length + 3));
  if (!Number.isInteger(value) || value < 1) throw new Error(`--${name} takes a whole number above 0`);
  return value;
};
const [steps, firstSeed, length] = [option('steps', 5000), option('seed', 1), option('length', 100)];
const books = process.argv.some((arg) => arg.startsWith('--book='))
  ? [bookAt(option('book', 1))]
  : shippedBooks;
if (!process.argv.includes('--as-built')) buildApp();
const app = await serveApp();
const browser = await launchBrowser();
try {
  process.exitCode = (await wander()) === 0 ? 0 : 1;
} finally {
  await browser.close();
  await app.close();
}

function bookAt(number: number): (typeof shippedBooks)[number] {
  const book = shippedBooks[number - 1];
  if (book === undefined) throw new Error(`--book takes a number up to ${shippedBooks.length}`);
  return book;
}

/** Walks, prints, and gives the number of differences. */
async function wander(): Promise<number> {
  const start = performance.now();
  const counts = new Map<string, number>();
  const failures: (Failure & { readonly seed: number })[] = [];
  let [edits, walks] = [0, 0];
  for (let done = 0; done < steps; done += length, walks += 1) {
    const seed = firstSeed + walks;
    const book = books[walks % books.length] ?? shippedBooks[0];
    const found = await walk(browser, app.address, book, { seed, count: Math.min(length, steps - done) });
    for (const [kind, count] of found.steps) counts.set(kind, (counts.get(kind) ?? 0) + count);
    edits += found.edits;
    failures.push(...found.failures.map((failure) => ({ ...failure, seed })));
    console.error(`${done + length} steps, seed ${seed}, ${book}: ${found.failures.length} differences`);
  }
  const walked = (performance.now() - start) / 1000;
  const first = new Map<string, Failure & { readonly seed: number; readonly times: number }>();
  for (const failure of failures) {
    const sign = signOf(failure);
    const known = first.get(sign);
    const shorter = known && known.steps.length <= failure.steps.length ? known : failure;
    first.set(sign, { ...shorter, times: (known?.times ?? 0) + 1 });
  }
  for (const [kind, count] of [...counts].sort((a, b) => b[1] - a[1]))
    console.log(`${String(count).padStart(6)}  ${kind}`);
  for (const [sign, failure] of first) {
    const short = process.argv.includes('--whole')
      ? failure
      : { ...(await shrink(browser, app.address, failure)), seed: failure.seed };
    console.log(`\n${failure.times} times ${sign}\n${failureWords(short)}`);
  }
  console.log(
    `\n${steps} steps over ${books.length} ${books.length === 1 ? 'book' : 'books'}, ${edits} edits seen, ${failures.length} differences of ${first.size} kinds; ` +
      `seeds ${firstSeed} to ${firstSeed + walks - 1}; ${walked.toFixed(0)} s`,
  );
  return failures.length;
}
