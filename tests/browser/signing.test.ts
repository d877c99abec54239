import { beforeEach, expect, test } from 'vitest';
import { writeBook } from '../../src/document/index.ts';
import { axeFindings, enter, showSheet } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { openSmallBook, smallBook } from './small-book.ts';

withBrowser();
beforeEach(async () => {
  await openPage({ secondEngine: true });
  await openSmallBook(page);
});

const signing = () => page.locator('quay-signing-page');
const signatures = () => signing().getByRole('table', { name: 'Signatures' });

async function showSigning(): Promise<void> {
  await page
    .locator('quay-sheet-list')
    .getByRole('button', { name: 'Signatures and revisions', exact: true })
    .click();
  await signing().getByRole('heading', { name: 'Signatures and revisions' }).waitFor();
}

test('a book is signed under its content, and the signature tells when that is another', async () => {
  await showSigning();
  await signing().getByRole('radio', { name: 'prepared' }).check();
  await signing().getByLabel('name').first().fill('K. Lind');
  // Until the second engine has computed it, the book needs a reason.
  await expect.poll(() => signing().locator('ul.open').count(), { timeout: 30_000 }).toBe(0);
  await signing().getByRole('button', { name: 'Sign', exact: true }).click();
  const row = signatures().getByRole('row').filter({ hasText: 'prepared' });
  await expect.poll(() => row.textContent()).toMatch(/K\. Lind\s*\d{4}-\d\d-\d\d\s*[0-9a-f]{12}\s*as signed/);
  expect(await axeFindings(page)).toEqual([]);
  await showSheet(page, 'Berthing energy');
  await enter(page, 'speed across the berth', '0.25');
  await showSigning();
  await expect.poll(() => row.textContent()).toMatch(/changed since\s*energy\.v: 0\.2 m\/s → 0\.25 m\/s/);
});

test('what is open needs a reason, which stays beside the signature', async () => {
  await showSheet(page, 'Berthing energy');
  await enter(page, 'speed across the berth', 'fast');
  await showSigning();
  await signing().getByLabel('name').first().fill('K. Lind');
  await signing().getByRole('button', { name: 'Sign', exact: true }).click();
  await expect
    .poll(() => signing().getByRole('alert').textContent())
    .toMatch(/^before it is signed: 1 problem/);
  await signing().getByLabel('why it is signed all the same').fill('speed to be measured');
  await signing().getByRole('button', { name: 'Sign', exact: true }).click();
  await expect
    .poll(() => signatures().getByRole('row').filter({ hasText: 'checked' }).textContent())
    .toMatch(/signed despite 1 problem.*: speed to be measured/s);
});

test('a revision is issued once by its name, and tells what has changed since', async () => {
  await showSigning();
  const issue = signing().getByRole('button', { name: 'Issue' });
  await signing().getByLabel('name').last().fill('K. Lind');
  await signing().getByLabel('revision', { exact: true }).fill('A');
  await signing().getByLabel('note').fill('for comment');
  await issue.click();
  const row = signing()
    .getByRole('table', { name: 'Revisions' })
    .getByRole('row')
    .filter({ hasText: 'for comment' });
  await expect.poll(() => row.textContent()).toMatch(/^\s*A\s/);
  await signing().getByLabel('revision', { exact: true }).fill('A');
  await issue.click();
  await expect.poll(() => signing().getByRole('alert').textContent()).toBe('Revision A is issued already.');
  await showSheet(page, 'Berthing energy');
  await enter(page, 'speed across the berth', '0.25');
  await showSigning();
  await row.getByRole('button', { name: 'what has changed since' }).click();
  await expect
    .poll(() => signing().getByRole('group', { name: 'Changes' }).textContent())
    .toMatch(/0\.2\D.*0\.25.*31\.25/s);

  await page.keyboard.press('Control+p');
  await page.getByRole('radio', { name: 'this page: Signatures and revisions' }).waitFor();
  await page.getByRole('radio', { name: 'the whole book' }).check();
  const paper = page.locator('quay-printed-book quay-signing-page');
  await expect
    .poll(() => paper.getByRole('table', { name: 'Revisions', includeHidden: true }).textContent())
    .toMatch(/for comment/);
  await expect.poll(() => paper.locator('.page :is(button, input, quay-book-changes)').count()).toBe(0);
  await page.keyboard.press('Escape');

  const changes = signing().locator('quay-book-changes');
  await signing().getByLabel('revision', { exact: true }).fill('B');
  await issue.click();
  await showSheet(page, 'Berthing energy');
  await enter(page, 'speed across the berth', '0.3');
  await showSigning();
  // Between two revisions what came later does not count.
  await changes.getByLabel('changes from').selectOption({ label: 'revision A' });
  await changes.getByLabel('to', { exact: true }).selectOption({ label: 'revision B' });
  await expect
    .poll(() => changes.getByRole('group', { name: 'Changes' }).textContent())
    .toMatch(/0\.2\D.*0\.25/s);
  expect(await changes.getByRole('group', { name: 'Changes' }).textContent()).not.toContain('0.3');
  await changes.getByLabel('to', { exact: true }).selectOption({ label: 'the book as it stands' });
  await expect
    .poll(() => changes.getByRole('group', { name: 'Changes' }).textContent())
    .toMatch(/0\.2\D.*0\.3/s);
  expect(await axeFindings(page)).toEqual([]);
});

test('a file is compared with the book as it stands', async () => {
  await showSheet(page, 'Berthing energy');
  await enter(page, 'speed across the berth', '0.25');
  await showSigning();
  const changes = signing().locator('quay-book-changes');
  await page.evaluate(() => Reflect.deleteProperty(globalThis, 'showOpenFilePicker'));
  const choose = async (text: string): Promise<void> => {
    const asked = page.waitForEvent('filechooser');
    await changes.getByLabel('changes from').selectOption({ label: 'a file…' });
    await (await asked).setFiles({ name: 'b.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  };
  await choose('{');
  await expect.poll(() => changes.getByRole('alert').count()).toBe(1);
  await changes.getByLabel('changes from').selectOption('');
  await choose(writeBook(smallBook));
  await expect
    .poll(() => changes.getByRole('group', { name: 'Changes' }).textContent())
    .toMatch(/0\.2\D.*0\.25.*31\.25/s);
});
