import { mkdir, writeFile } from 'node:fs/promises';
import type { Browser, Locator, Page } from 'playwright-core';
import { type Hands, openApp } from '../app-page.ts';
import { asWebp } from './webp.ts';

/** One screen: how a person gets to it from the start page. */
export interface Screen {
  readonly name: string;
  readonly go: (page: Page) => Promise<void>;
  /** What the picture shows, where that is not the window. */
  readonly part?: (page: Page) => Locator;
  /** The height of the window, 900 unless told. */
  readonly height?: number;
  /** Printed as it stands, as a PDF, instead of pictured. */
  readonly print?: boolean;
}

/** The window and the colours a screen is taken in, and the folder it goes to. */
export interface Variant extends Hands {
  readonly name: string;
  readonly width: number;
  /** WebP where the pictures are kept and read, else PNG. */
  readonly format?: 'webp';
}

/** The clock of every picture, so that two runs give the same. */
const shownTime = new Date('2026-11-25T11:00:00');

/**
 * Takes screens one after another, each in a browser without any books, and writes them to a folder. A screen that
 * cannot be reached is told with its name, and so is whatever the page complains of; both end the run badly.
 */
export async function takeAll(
  browser: Browser,
  address: string,
  screens: readonly Screen[],
  { name: variant, format, ...hands }: Variant,
  folder: string,
): Promise<void> {
  await mkdir(folder, { recursive: true });
  for (const { name, go, part, height = hands.height ?? 900, print = false } of screens) {
    // Paper knows neither width nor dark.
    if (print && variant !== '1440-light') continue;
    const { page, context, complaints } = await openApp(browser, address, {
      ...hands,
      height,
      secondEngine: true,
    });
    try {
      await page.clock.setFixedTime(shownTime);
      await go(page);
      await page.evaluate(() => document.fonts.ready.then(() => undefined));
      await page.waitForTimeout(300);
      if (print) await page.pdf({ path: `${folder}/${name}.pdf`, format: 'A4', printBackground: true });
      else {
        const picture = await (part?.(page) ?? page).screenshot();
        const bytes = format === 'webp' ? await asWebp(context, picture) : picture;
        await writeFile(`${folder}/${name}.${format ?? 'png'}`, bytes);
      }
    } catch (error) {
      complaints.push(error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error));
    }
    for (const complaint of complaints) {
      process.exitCode = 1;
      console.error(`${[variant, name].filter(Boolean).join(' ')}: ${complaint}`);
    }
    await context.close();
  }
}
