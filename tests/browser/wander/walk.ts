import type { Browser } from 'playwright-core';
import { startFrom } from '../app-page.ts';
import { Hands } from './hands.ts';
import { judge, stateOf } from './judge.ts';
import type { Kind, Step } from './kind.ts';
import { kinds } from './kinds.ts';
import { type Chance, chanceOf } from './random.ts';
import { Eyes, type Seen } from './seen.ts';
import type { State } from './state.ts';

/** The books that are walked over: the shipped templates by their titles, and the demo. */
export const shippedBooks = [
  'the demo',
  'Berthing energy and fenders',
  'Axial capacity of a waterside crane pile',
  'Demolition debris: quantities, haul fleet, cost',
  'Bollard pull and mooring lines',
] as const;

/** A step where what the page shows is not what it should. */
export interface Failure {
  readonly book: string;
  /** The steps that lead there from the opened book; the last one fails. */
  readonly steps: readonly Step[];
  readonly what: string;
  readonly lines: readonly string[];
}

/** What a walk came to. */
export interface Walked {
  readonly steps: ReadonlyMap<string, number>;
  /** How often the book was another after a step. */
  readonly edits: number;
  readonly failures: readonly Failure[];
}

/** A book opened in a window of its own, with somebody at it. */
export interface Desk {
  readonly hands: Hands;
  readonly eyes: Eyes;
  readonly close: () => Promise<void>;
}

/** Opens a shipped book. */
export async function openDesk(browser: Browser, address: string, book: string): Promise<Desk> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
    permissions: ['clipboard-read', 'clipboard-write'],
  });
  // The second engine would take a core of its own after each edit.
  await context.route(/\/recheck-[^/]*\.js$/, (route) =>
    route.fulfill({ contentType: 'text/javascript', body: '' }),
  );
  const page = await context.newPage();
  const hands = new Hands(context, page);
  await page.goto(address, { waitUntil: 'load' });
  if (book === 'the demo') {
    await page.getByRole('button', { name: 'Open the demo book' }).click();
    await page.locator('quay-line').first().waitFor();
  } else await startFrom(page, book);
  await hands.rest();
  return { hands, eyes: new Eyes(hands), close: () => context.close() };
}

/** Does one step and judges it; undefined where it cannot be done as things stand. */
export async function takeStep(
  desk: Desk,
  step: Step,
  state: State,
  before: Seen,
): Promise<{ readonly seen: Seen; readonly finding: ReturnType<typeof judge> } | undefined> {
  const kind = kinds.find(({ name }) => name === step.kind);
  if (!kind) throw new Error(`no step is called “${step.kind}”`);
  if (kind.weight(before, state) <= 0) return undefined;
  if (!(await kind.perform(desk.hands, step.args, before))) return undefined;
  const seen = await desk.eyes.look();
  return { seen, finding: judge(kind.expect(state, step.args, before, seen), state, seen) };
}

/** Walks over a book without a plan. After a difference the walk goes on from what the page shows. */
export async function walk(
  browser: Browser,
  address: string,
  book: string,
  {
    seed,
    count,
    most = Number.POSITIVE_INFINITY,
  }: { readonly seed: number; readonly count: number; readonly most?: number },
): Promise<Walked> {
  const chance = chanceOf(seed);
  const desk = await openDesk(browser, address, book);
  const steps = new Map<string, number>();
  const done: Step[] = [];
  const failures: Failure[] = [];
  let edits = 0;
  try {
    let seen = await desk.eyes.look();
    let state: State = { ...stateOf(seen), pastKnown: true };
    for (let at = 0, tries = 0; at < count && failures.length < most; tries += 1) {
      if (tries > 20 * count) throw new Error('hardly any step can be taken');
      const step = drawStep(seen, state, chance);
      if (!step) continue;
      const taken = await takeStep(desk, step, state, seen);
      if (!taken) {
        // Something may have moved or been half done; the model goes by what is there.
        seen = await desk.eyes.look();
        continue;
      }
      at += 1;
      done.push(step);
      steps.set(step.kind, (steps.get(step.kind) ?? 0) + 1);
      if (taken.seen.book !== seen.book) edits += 1;
      ({ seen } = taken);
      if (taken.finding.kind === 'sound') ({ state } = taken.finding);
      else {
        const { what, lines } = taken.finding;
        failures.push({ book, steps: [...done], what, lines });
        state = stateOf(seen);
      }
    }
  } finally {
    await desk.close();
  }
  return { steps, edits, failures };
}

function drawStep(seen: Seen, state: State, chance: Chance): Step | undefined {
  const weights = kinds.map((kind) => kind.weight(seen, state));
  let at = chance.number() * weights.reduce((sum, one) => sum + one, 0);
  const kind = kinds.find((_, index): boolean => {
    at -= weights[index] ?? 0;
    return at < 0;
  });
  return kind && drawn(kind, seen, state, chance);
}

function drawn(kind: Kind<unknown>, seen: Seen, state: State, chance: Chance): Step | undefined {
  const args = kind.draw(seen, chance, state);
  return args === undefined ? undefined : { kind: kind.name, args };
}
