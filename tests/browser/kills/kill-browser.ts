import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import type { Session } from '../../../src/app/session/session.ts';
import { line, startFrom } from '../app-page.ts';
import { launchKillable } from '../launch.ts';

/** How the browser ends: by a kill at a random moment, by one right after the key, or by closing the tab right after it. */
const endings = ['killed at any moment', 'killed after the key', 'tab closed after the key'] as const;
type Ending = (typeof endings)[number];

/** What became of the edits of all rounds that ended in one way. */
export interface KillCount {
  readonly ending: Ending;
  rounds: number;
  /** Edits that were entered. */
  edits: number;
  /** Edits that the page called kept before its end. */
  kept: number;
  /** Edits that were called kept and are not found. */
  lost: number;
  /** Last edits of a round that are not found, called kept or not. */
  lastLost: number;
}

/** The line whose value each edit changes, and what is entered: the number of the edit behind a point. */
const label = 'softness factor';
const entryOf = (edit: number): string => `0.5${String(edit).padStart(5, '0')}`;
const editOf = (entry: string): number => Number(entry.slice(3));

/**
 * Kills the browser so many times while edits are entered, and starts it again on the same profile. `random` gives numbers
 * from 0 to 1. The service worker is left out, so that each start loads what it needs and no more.
 */
export async function killBrowser(
  address: string,
  rounds: number,
  random: () => number,
  log: (text: string) => void,
): Promise<readonly KillCount[]> {
  const counts = endings.map((ending): KillCount => {
    return { ending, rounds: 0, edits: 0, kept: 0, lost: 0, lastLost: 0 };
  });
  const profile = await mkdtemp(join(tmpdir(), 'quaybook-kills-'));
  let book: string | undefined;
  let edit = 0;
  let before: { readonly count: KillCount; readonly kept: number; readonly last: number } | undefined;
  try {
    for (let round = 0; round <= rounds; round += 1) {
      const { browser, kill } = await launchKillable(profile);
      try {
        const [context] = browser.contexts();
        const page = context?.pages()[0];
        if (!context || !page) throw new Error('the browser has no page');
        let kept = 0;
        await page.exposeBinding('hearKept', (_, entry: string) => {
          kept = Math.max(kept, editOf(entry));
        });
        await page.addInitScript(() => Reflect.deleteProperty(Navigator.prototype, 'serviceWorker'));
        await page.goto(book ?? address);
        if (book === undefined) await startFrom(page, 'Berthing energy and fenders');
        await page.locator('quay-line').first().waitFor();
        book = page.url();
        const found = await watchEntry(page);
        if (before) judge(before, found, log);
        if (round === rounds) break;
        // What was found once is found again, and is no edit of this round.
        kept = Math.max(kept, found);
        edit = Math.max(edit, found);
        const ending = round % 3 === 0 ? endings[1] : round % 3 === 1 ? endings[2] : endings[0];
        const count = counts.find((one) => one.ending === ending);
        if (!count) throw new Error('no such ending');
        const first = edit;
        await page.locator('quay-sheet-list').getByRole('button', { name: 'Berthing energy' }).click();
        await line(page, label).locator('[data-field="value"]').click();
        const enterNext = async (): Promise<void> => {
          edit += 1;
          await page.keyboard.type(entryOf(edit));
          await page.keyboard.press('Enter');
        };
        if (ending === 'killed at any moment') {
          const end = new Promise((resolve) => setTimeout(resolve, random() * 1500)).then(kill);
          // Keys that come when the browser is gone are refused.
          for (let more = true; more; )
            more = await enterNext()
              .then(() => page.keyboard.press('ArrowUp'))
              .then(
                () => true,
                () => false,
              );
          await end;
        } else {
          const several = 1 + Math.floor(random() * 4);
          for (let step = 0; step < several; step += 1) {
            if (step > 0) await page.keyboard.press('ArrowUp');
            await enterNext();
          }
          if (ending === 'killed after the key') await kill();
          else {
            await page.close();
            // A person who closes a tab does not kill the browser with the same key.
            await new Promise((resolve) => setTimeout(resolve, 300));
          }
        }
        count.rounds += 1;
        count.edits += edit - first;
        count.kept += Math.max(0, kept - first);
        before = { count, kept, last: edit };
      } finally {
        await kill();
      }
    }
  } finally {
    await rm(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
  return counts;
}

function judge(
  { count, kept, last }: { readonly count: KillCount; readonly kept: number; readonly last: number },
  found: number,
  log: (text: string) => void,
): void {
  if (found < kept) {
    count.lost += kept - found;
    log(`${count.ending}: edit ${kept} was called kept, and ${found} is found`);
  }
  if (found < last) count.lastLost += 1;
}

/** Gives the edit that the open book has, and from now on has every edit told that the page calls kept. */
function watchEntry(page: Page): Promise<number> {
  return page.evaluate((of) => {
    const { session } = document.querySelector('quay-app') as unknown as { readonly session: Session };
    const { hearKept } = globalThis as unknown as { readonly hearKept: (entry: string) => void };
    const entry = (): string => {
      const rows = session.notebook.book.sheets.flatMap(({ parts }) =>
        parts.flatMap((part) => (part.kind === 'rows' ? part.rows : [])),
      );
      const row = rows.find((one) => one.label === of);
      return row?.kind === 'given' ? row.entry : '';
    };
    session.subscribe(({ kind }) => {
      if (kind === 'kept' && session.kept.state === 'kept') hearKept(entry());
    });
    if (session.kept.state !== 'kept') throw new Error(JSON.stringify(session.kept));
    return entry().length === 8 ? Number(entry().slice(3)) : 0;
  }, label);
}
