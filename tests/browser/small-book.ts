import type { Page } from 'playwright-core';
import { type Book, blankBook, writeBook } from '../../src/document/index.ts';
import { openBookFile } from './open-book-file.ts';

/** Its title, as the start page lists it. */
export const SMALL_BOOK = 'Berthing energy in short';

export const smallBook: Book = {
  ...blankBook(),
  title: { ...blankBook().title, subject: SMALL_BOOK },
  sheets: [
    {
      key: 'energy',
      title: 'Berthing energy',
      parts: [
        {
          id: 'p',
          kind: 'rows',
          rows: [
            { id: 'm', kind: 'given', name: 'm', label: 'mass of the ship', entry: '1000', unit: 't' },
            { id: 'v', kind: 'given', name: 'v', label: 'speed across the berth', entry: '0.2', unit: 'm/s' },
            { id: 's', kind: 'given', name: 'C_S', label: 'softness factor', entry: '1' },
            { id: 'c', kind: 'given', name: 'C_C', label: 'berth configuration factor', entry: '1' },
            {
              id: 'e',
              kind: 'calc',
              name: 'E_N',
              label: 'normal berthing energy',
              formula: 'm * v² / 2 * C_S * C_C',
              unit: 'kN*m',
            },
          ],
        },
      ],
    },
    { key: 'ship', title: 'Design ship', parts: [] },
  ],
};

/** Opens a book of five lines: where a test is not of a template, the opening of a template takes most of its time. */
export async function openSmallBook(page: Page): Promise<void> {
  await openBookFile(page, writeBook(smallBook));
}
