import type { BrowserContext, Page } from 'playwright-core';
import type { Random } from '../../recheck/random.ts';

/** Somebody at an open page, who brings texts into it. */
export interface Hands {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly random: Random;
}

/** Presses a cell of the sheet shown, whichever comes up; false where there is none to be reached. */
export async function clickAnyCell({ page, random }: Hands, cells = '[data-field]'): Promise<boolean> {
  const at = await page.evaluate(pointOfCell, { cells, draw: random.below(1e6) });
  if (at) await page.mouse.click(at.x, at.y);
  return at !== undefined;
}

/** Runs in the page: a point of the cell that a number stands for, brought into sight. */
function pointOfCell({ cells, draw }: { readonly cells: string; readonly draw: number }) {
  const found: Element[] = [];
  const visit = (root: ParentNode): void => {
    found.push(...root.querySelectorAll(cells));
    for (const element of root.querySelectorAll('*')) if (element.shadowRoot) visit(element.shadowRoot);
  };
  visit(document.body);
  const cell = found[draw % Math.max(found.length, 1)];
  cell?.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });
  const box = cell?.getBoundingClientRect();
  if (!box || box.width === 0 || box.height === 0) return undefined;
  const x = Math.min(Math.max(box.left + Math.min(box.width / 2, 20), 1), innerWidth - 2);
  const y = Math.min(Math.max(box.top + Math.min(box.height / 2, 12), 1), innerHeight - 2);
  return { x, y };
}

/** Puts a text in as if it were typed, all at once; a short one also key by key, as the field may help then. */
export async function type({ page, random }: Hands, text: string): Promise<void> {
  if (text.length <= 24 && /^[ -~]*$/.test(text) && random.oneIn(2)) await page.keyboard.type(text);
  else await page.keyboard.insertText(text);
}

/** Leaves what is being typed by one of the ways out. */
export async function leave({ page, random }: Hands): Promise<void> {
  const way = random.pick(['Enter', 'Tab', 'Escape', 'click', 'Shift+Tab', 'Control+z']);
  if (way === 'click') await page.mouse.click(700, 500);
  else await page.keyboard.press(way);
}

/** Goes back to the page itself, whatever lies over it: menus, dialogs, what is being typed. */
export async function comeBack({ page }: Hands): Promise<void> {
  for (let tries = 0; tries < 4; tries += 1) {
    await page.keyboard.press('Escape');
    if ((await page.locator('dialog[open], [role=menu]:popover-open').count()) === 0) return;
  }
}

/** Waits until the page has drawn what was done, and has had a moment for what it does right after. */
export async function settle(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => setTimeout(() => setTimeout(done, 30)))),
  );
}
