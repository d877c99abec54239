import { beforeEach, describe, expect, test } from 'vitest';
import { hostileBook } from '../markup/hostile-book.ts';
import { drawn, showSheet } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { tell, toPaper } from './on-paper.ts';

withBrowser();

/**
 * Texts that stand on no screen before something is opened (the words of an option not chosen, the references of given
 * columns, what the book is about), and a name that a problem cuts.
 */
const elsewhere =
  /^(label of option two|reference of column (soil|z_t|z_b|odd)|note of a unit|purpose|standard|scope|limit|caution|assumption|name of a cell that is none)$/;

/** Drops a file on the start page, and waits for its first sheet. */
async function dropBook(json: string, name: string): Promise<void> {
  await page.evaluate(
    ([text = '', fileName = '']) => {
      const dropped = new DataTransfer();
      dropped.items.add(new File([text], fileName, { type: 'application/json' }));
      const app = document.querySelector('quay-app');
      const start = (app?.shadowRoot ?? app)?.querySelector('quay-start-page');
      const main = (start?.shadowRoot ?? start)?.querySelector('main');
      if (!main) throw new Error('there is no start page to drop a file on');
      main.dispatchEvent(new DragEvent('drop', { dataTransfer: dropped, bubbles: true, cancelable: true }));
    },
    [json, name],
  );
}

/** All words of the page, hidden ones too, without spaces, and every element that came out of a text. */
function readPage(): Promise<{ words: string; strange: readonly string[] }> {
  return page.evaluate(() => {
    let words = '';
    const strange: string[] = [];
    const visit = (root: ParentNode): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element.classList.contains('strange') || /^(img|iframe|script|mglyph)$/i.test(element.localName))
          strange.push(element.outerHTML);
        for (const { value } of element.attributes) words += ` ${value}`;
        if (element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement)
          words += element.value;
        if (element.shadowRoot) {
          words += element.shadowRoot.textContent;
          visit(element.shadowRoot);
        }
      }
    };
    const { body } = document;
    words += body.textContent;
    visit(body);
    if ('strange' in globalThis) strange.push('a script ran');
    return { words: words.replace(/\s/g, ''), strange };
  });
}

describe.each(['short', 'long'] as const)('a book full of %s markup', (length) => {
  const { json, texts } = hostileBook(length);
  beforeEach(() => openPage());

  test('shows it as text, on sheets, panel and overview, on screen and on paper', async () => {
    await dropBook(json, '<img src=x class=strange>.json');
    await page.locator('quay-line').first().waitFor();
    let words = '';
    const look = async (): Promise<void> => {
      await drawn(page);
      const read = await readPage();
      expect(read.strange).toEqual([]);
      words += read.words;
    };
    for (const title of ['title of a sheet', 'title of another sheet']) {
      await showSheet(page, texts.get(title) ?? '');
      for (const line of await page.locator('quay-line').all()) {
        await line.locator('[data-field="name"]').first().click();
        await look();
      }
      for (const head of await page.locator('quay-table [data-item="head"] [data-field]').all()) {
        await head.click();
        await look();
      }
    }
    await toPaper(page);
    await look();
    await tell(page, 'afterprint');
    await page.emulateMedia({ media: 'screen' });
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.locator('quay-sheet-list').getByRole('button', { name: 'All checks' }).click();
    await page.locator('quay-overview').waitFor();
    await look();
    const missed = [...texts].filter(
      ([where, text]) => !elsewhere.test(where) && !words.includes(text.replace(/\s/g, '')),
    );
    expect(missed).toEqual([]);
  });
});

test('a file that is no book is refused by its name, as text', async () => {
  await openPage();
  await dropBook('{', '<img src=x class=strange>.json');
  const refusal = page.getByRole('alert');
  expect(await refusal.textContent()).toContain('<img src=x class=strange>.json');
  expect((await readPage()).strange).toEqual([]);
});

test('the policy of the page lets no form send, no base change and no plugin load', async () => {
  await openPage();
  const policy = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');
  expect(policy?.split(/;\s*/)).toEqual([
    "default-src 'self'",
    "form-action 'none'",
    "base-uri 'none'",
    "object-src 'none'",
  ]);
});
