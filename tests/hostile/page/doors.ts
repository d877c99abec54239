import { CELLS_TYPE } from '../../../src/app/editing/clipboard/clipboard-text.ts';
import { changeStored } from '../../browser/stored-books.ts';
import { bookWith } from '../book-with.ts';
import { spoiltBook } from '../spoilt-book.ts';
import { clickAnyCell, comeBack, type Hands, leave, settle, type } from './hands.ts';

/** A way of a text into the page; false where it could not be gone as things stood. */
export interface Door {
  /** Where it begins: at an open book, an empty one, or the page of all books. */
  readonly from: 'book' | 'empty book' | 'start';
  readonly go: (hands: Hands, text: string) => Promise<boolean>;
}

/** The doors of an open page, by their names. */
export const doors: Readonly<Record<string, Door>> = {
  'typed over a cell': {
    from: 'book',
    go: async (hands, text) => {
      if (!(await clickAnyCell(hands))) return false;
      await type(hands, text);
      await settle(hands.page);
      await leave(hands);
      return true;
    },
  },
  'typed into a cell': {
    from: 'book',
    go: async (hands, text) => {
      if (!(await clickAnyCell(hands))) return false;
      await hands.page.keyboard.press('F2');
      if (hands.random.oneIn(2)) await hands.page.keyboard.press('Control+a');
      await type(hands, text);
      await settle(hands.page);
      await leave(hands);
      return true;
    },
  },
  'pasted on a cell': {
    from: 'book',
    go: async (hands, text) => (await clickAnyCell(hands)) && paste(hands, text),
  },
  'pasted on a heading': {
    from: 'book',
    go: async (hands, text) =>
      (await clickAnyCell(hands, '[data-item="head"] [data-field]')) && paste(hands, text),
  },
  'pasted on lines': {
    from: 'book',
    go: async (hands, text) => {
      if (!(await clickAnyCell(hands, 'quay-line [data-field="name"]'))) return false;
      await hands.page.keyboard.press('Shift+Space');
      return paste(hands, text);
    },
  },
  'pasted on an empty page': {
    from: 'empty book',
    go: async (hands, text) => {
      if (hands.random.oneIn(2)) await hands.page.mouse.click(700, 600);
      return paste(hands, text);
    },
  },
  'pasted as cells of the app': {
    from: 'book',
    go: async (hands, text) => {
      if (!(await clickAnyCell(hands))) return false;
      const cells = copiedCells(hands, text);
      await hands.page.evaluate(
        ([kind = '', own = '', plain = '']) => {
          const clipboardData = new DataTransfer();
          clipboardData.setData(kind, own);
          clipboardData.setData('text/plain', plain);
          let at = document.activeElement;
          while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
          at?.dispatchEvent(
            new ClipboardEvent('paste', { clipboardData, bubbles: true, composed: true, cancelable: true }),
          );
        },
        [CELLS_TYPE, cells, text],
      );
      return answer(hands);
    },
  },
  'rows in the dialog': {
    from: 'book',
    go: async (hands, text) => {
      const { page } = hands;
      if (!(await clickAnyCell(hands, 'quay-table [data-field="title"]'))) return false;
      await page.keyboard.press('Shift+F10');
      await page.getByRole('menuitem', { name: /Paste or open CSV/ }).click({ timeout: 3000 });
      const dialog = page.getByRole('dialog', { name: /CSV/ });
      if (hands.random.oneIn(3))
        await dialog.locator('input[type=file]').setInputFiles({
          name: `${text.slice(0, 60).replaceAll('/', '')}.csv`,
          mimeType: 'text/csv',
          buffer: Buffer.from(text),
        });
      else {
        await dialog.getByRole('textbox', { name: 'Rows' }).focus();
        await pasteWhereTheFocusIs(hands, text);
      }
      return answer(hands);
    },
  },
  'name of a sheet': {
    from: 'book',
    go: async (hands, text) => {
      const { page } = hands;
      await page.locator('quay-sheet-list').getByRole('button', { name: 'sheet menu' }).first().focus();
      await page.keyboard.press('Enter');
      const item = hands.random.pick(['Title, key and group', 'Add a sheet below']);
      await page.getByRole('menuitem', { name: item }).click({ timeout: 3000 });
      return fillDialog(hands, 'quay-sheet-dialog', text, /^(Keep|Add)$/);
    },
  },
  'unit, currency or datum of the book': {
    from: 'book',
    go: async (hands, text) => {
      const { page } = hands;
      await page.getByRole('button', { name: 'Book', exact: true }).click({ timeout: 3000 });
      await page.getByRole('button', { name: 'Add a unit' }).click({ timeout: 3000 });
      return fillDialog(hands, 'quay-book-settings', text, /^Keep$/);
    },
  },
  'details of a line, a column or a part': {
    from: 'book',
    go: async (hands, text) => {
      const { page } = hands;
      if (!(await clickAnyCell(hands))) return false;
      await page.keyboard.press('Shift+F10');
      const words = /^(Details|What these words are|Name and title|Name, type and unit)$/;
      const item = page.getByRole('menuitem', { name: words }).first();
      if (!(await isThere(item))) return false;
      await item.click({ timeout: 3000 });
      return fillDialog(hands, 'quay-details', text, /^Keep$/);
    },
  },
  'searched for': {
    from: 'book',
    go: async (hands, text) => {
      const { page } = hands;
      await page.keyboard.press('Control+g');
      await page.locator('dialog[open] input').first().fill(text, { timeout: 3000 });
      await settle(page);
      await page.keyboard.press('Enter');
      return true;
    },
  },
  'draft of what was being typed': {
    from: 'book',
    go: async (hands, text) => {
      const { page, random } = hands;
      const place = { sheet: 's', part: 'p', item: 'a', field: 'value' };
      const draft = { place, kind: 'entry', held: '', draft: text, units: 'written' };
      const strange = {
        ...draft,
        ...random.pick([
          { kind: text },
          { held: text },
          { place: { ...place, [random.pick(['sheet', 'part', 'item', 'field'])]: text } },
        ]),
      };
      const noted = random.pick([text, JSON.stringify(draft), JSON.stringify(strange)]);
      await settle(page);
      await page.evaluate((words) => {
        const book = /^#book\/([^/]+)/.exec(location.hash)?.[1];
        sessionStorage.setItem(`quaybook draft of ${book}`, words);
        localStorage.setItem(`quaybook draft of ${book}`, words);
      }, noted);
      return reload(hands);
    },
  },
  'snapshot in the storage': {
    from: 'book',
    go: async (hands, text) => {
      const stored = hands.random.oneIn(2) ? text : spoiltBook(hands.random, text);
      await putAside(hands, { snapshot: stored });
      await changeStored(hands.page, ([, texts]) => {
        const { snapshot } = (globalThis as unknown as { aside: { snapshot: string } }).aside;
        texts.openCursor().onsuccess = ({ target }) => {
          const cursor = (target as IDBRequest<IDBCursorWithValue | null>).result;
          cursor?.update({ ...cursor.value, text: snapshot });
        };
      });
      return reload(hands);
    },
  },
  'journal in the storage': {
    from: 'book',
    go: async (hands, text) => {
      await putAside(hands, { edit: strangeEdit(hands, text), name: text });
      await changeStored(hands.page, ([books, , journal]) => {
        const { edit, name } = (globalThis as unknown as { aside: { edit: unknown; name: string } }).aside;
        journal.openCursor(null, 'prev').onsuccess = ({ target }) => {
          const cursor = (target as IDBRequest<IDBCursorWithValue | null>).result;
          if (!cursor) return;
          const { book, number } = cursor.value as { book: string; number: number };
          journal.put({ book, number: number + 1, edit });
          books.put({ id: book, name, changed: 0, sequence: number + 1 });
        };
      });
      return reload(hands);
    },
  },
  'opened as a file': {
    from: 'start',
    go: async (hands, text) => {
      const { random } = hands;
      const contents = random.pick([
        () => text,
        () => bookWith(text, random),
        () => spoiltBook(random, text),
        () => spoiltBook(random, text),
      ])();
      await drop(hands, contents, `${text.slice(0, 80)}.json`);
      await settle(hands.page);
      await hands.page.waitForTimeout(150);
      for (let cells = 0; cells < 3; cells += 1) await clickAnyCell(hands);
      return true;
    },
  },
};

async function paste(hands: Hands, text: string): Promise<boolean> {
  await pasteWhereTheFocusIs(hands, text);
  return answer(hands);
}

async function pasteWhereTheFocusIs({ page }: Hands, text: string): Promise<void> {
  await page.evaluate((words) => navigator.clipboard.writeText(words), text);
  await page.keyboard.press('Control+v');
}

/** Takes the rows where the dialog of rows lets them be taken, some of its choices made by chance. */
async function answer({ page, random }: Hands): Promise<boolean> {
  await settle(page);
  const dialog = page.getByRole('dialog', { name: /CSV/ });
  if ((await dialog.count()) === 0) return true;
  for (let wait = 0; wait < 100 && (await dialog.getByText(/^Reading/).count()) > 0; wait += 1)
    await page.waitForTimeout(100);
  const choices = dialog.locator('select, input[type=radio], input[type=checkbox]');
  for (let made = random.below(5); made > 0 && (await choices.count()) > 0; made -= 1) {
    const choice = choices.nth(random.below(await choices.count()));
    await choice.focus({ timeout: 3000 });
    await page.keyboard.press(random.pick(['Space', 'ArrowDown', 'ArrowDown']));
    await settle(page);
  }
  const take = dialog.getByRole('button', { name: 'Take the rows' });
  if ((await isThere(take)) && (await take.isEnabled())) await take.click({ timeout: 3000 });
  await settle(page);
  return true;
}

async function fillDialog(hands: Hands, dialog: string, text: string, keep: RegExp): Promise<boolean> {
  const { page, random } = hands;
  const fields = page.locator(dialog).locator('input:not([type=radio]):not([type=checkbox]), textarea');
  const count = await fields.count();
  if (count === 0) return false;
  for (let filled = 1 + random.below(3); filled > 0; filled -= 1)
    await fields.nth(random.below(count)).fill(text, { timeout: 3000 });
  await settle(page);
  const button = page.locator(dialog).getByRole('button', { name: keep });
  if ((await isThere(button)) && (await button.isEnabled())) await button.click({ timeout: 3000 });
  await settle(page);
  return true;
}

async function isThere(found: ReturnType<Hands['page']['locator']>): Promise<boolean> {
  return (await found.count()) > 0;
}

async function putAside({ page }: Hands, aside: Readonly<Record<string, unknown>>): Promise<void> {
  await page
    .getByText(/all kept/)
    .first()
    .waitFor({ timeout: 5000 });
  await page.evaluate((kept) => Object.assign(globalThis, { aside: kept }), aside);
}

async function reload(hands: Hands): Promise<boolean> {
  await hands.page.reload();
  await hands.page.waitForTimeout(200);
  await settle(hands.page);
  await clickAnyCell(hands);
  await comeBack(hands);
  return true;
}

/** An edit as a journal may have it, with a text in one of its places. */
function strangeEdit({ random }: Hands, text: string): unknown {
  const at = random.pick([
    ['sheets', text, 'parts'],
    ['title', text],
    [text],
    ['sheets', 's', 'parts', 'p', 'rows', 'a', text],
    [text, text, text],
    ['title', 'project'],
    ['settings', 'units'],
  ]);
  const value = random.pick([text, [text], { [text]: text }, { id: text, kind: 'given', name: text }, null]);
  const kind = random.pick(['set', 'insert', 'remove', 'move', 'cells', 'splice', text]);
  const counts = { index: 0, to: 0, from: random.pick([0, -1, 1e9, text]), remove: 1, insert: 1 };
  const patch = { kind, at, value, values: [text, value], cells: { [text]: [text] }, ...counts };
  return random.pick([
    text,
    { label: text, patches: [patch] },
    { label: text, patches: text },
    [patch],
    null,
  ]);
}

/** What another page may have put on the clipboard as cells or lines of the app. */
function copiedCells({ random }: Hands, text: string): string {
  const kind = random.pick(['given', 'calc', text]);
  const line = {
    id: 'x1',
    kind,
    name: random.pick(['x', text]),
    label: text,
    unit: random.pick(['m', text]),
  };
  const lines = [{ ...line, ...(kind === 'calc' ? { formula: text } : { entry: text }) }];
  const from = { book: text, sheet: random.pick(['s', text]), cut: random.oneIn(2) };
  const around = { cells: [[text, text]] };
  return random.pick([
    text,
    JSON.stringify({ ...around, units: [[text, null]], table: true }),
    JSON.stringify({ ...around, stated: [[text, text]], calculated: [0, 1e9], headed: true, from }),
    JSON.stringify({ ...around, lines, from }),
    `{"__proto__": ${JSON.stringify(around)}, "cells": [[${JSON.stringify(text)}]]}`,
  ]);
}

/** Drops a file on the page of all books. */
async function drop({ page }: Hands, contents: string, name: string): Promise<void> {
  await page.evaluate(
    ([text = '', fileName = '']) => {
      const dropped = new DataTransfer();
      dropped.items.add(new File([text], fileName, { type: 'application/json' }));
      const main = document
        .querySelector('quay-app')
        ?.shadowRoot?.querySelector('quay-start-page')
        ?.shadowRoot?.querySelector('main');
      if (!main) throw new Error('there is no start page to drop a file on');
      main.dispatchEvent(new DragEvent('drop', { dataTransfer: dropped, bubbles: true, cancelable: true }));
    },
    [contents, name],
  );
}
