import { mkdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { blankBook, type Part, writeBook } from '../../src/document/index.ts';
import { cell, drawn } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { openBookFile } from './open-book-file.ts';

withBrowser();

const parts: readonly Part[] = [
  {
    id: 'p',
    kind: 'rows',
    rows: [
      { id: 'b', kind: 'given', name: 'b', label: 'width', entry: '3', unit: 'm' },
      { id: 's', kind: 'calc', name: 'soil', label: 'ground', formula: 'IF(b > 2 m; "clay"; "sand")' },
      {
        id: 'f',
        kind: 'calc',
        name: 'f',
        label: 'friction',
        unit: 'kPa',
        by: 'soil',
        methods: [
          { id: 'c', for: ['clay'], formula: '20 kPa' },
          { id: 'e', formula: '0 kPa' },
        ],
      },
    ],
  },
];

async function open(): Promise<void> {
  await openPage();
  await openBookFile(page, writeBook({ ...blankBook(), sheets: [{ key: 's', title: 'Stated', parts }] }));
  await drawn(page);
}

const words = async (label: string, field = 'value'): Promise<string> =>
  ((await cell(page, label, field).textContent()) ?? '').replace(/\s+/g, ' ').trim();

/** A picture for whoever asks for them. */
async function picture(name: string): Promise<void> {
  const folder = process.env.QUAYBOOK_SCREENS;
  if (!folder) return;
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: `${folder}/remarks-${name}.png` });
}

test('a text that chooses methods and that none knows is refused as it is typed, and mended by one key', async () => {
  await open();
  await cell(page, 'ground', 'value').click();
  await page.keyboard.type('caly');
  await page.getByText('“caly” is none of the texts that choose a method of s.f: “clay”, “sand”').waitFor();
  await picture('text');
  await page.keyboard.press('Enter');
  await page.getByRole('textbox', { name: 'value of soil' }).waitFor();
  expect(await words('friction')).toContain('20');
  await page.keyboard.press('Alt+Enter');
  await page.getByText('states clay in place of the computed clay').waitFor();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await expect.poll(() => words('ground')).toContain('stated clay');
});
