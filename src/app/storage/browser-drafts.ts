import type { EditInHand } from '../view-model/edit-in-hand.ts';
import type { Drafts } from './drafts.ts';

const PREFIX = 'quaybook draft of ';

/**
 * What is being typed, noted with each letter in the storage of the tab, which a reload and a crash leave as it is. When
 * the page goes away it is noted for all tabs too, because a tab that is closed takes its own storage along.
 */
export function browserDrafts(): Drafts {
  addEventListener('pagehide', () => guarded(handOver));
  return {
    read: (book) => guarded(() => take(book)),
    write: (book, draft) =>
      guarded(() => {
        if (draft) sessionStorage.setItem(PREFIX + book, JSON.stringify(draft));
        else sessionStorage.removeItem(PREFIX + book);
        return true;
      }) ?? false,
  };
}

function handOver(): void {
  for (const key of Object.keys(sessionStorage)) {
    const text = sessionStorage.getItem(key);
    if (key.startsWith(PREFIX) && text !== null) localStorage.setItem(key, text);
  }
}

function take(book: string): EditInHand | undefined {
  const key = PREFIX + book;
  const text = sessionStorage.getItem(key) ?? localStorage.getItem(key);
  localStorage.removeItem(key);
  if (text === null) return undefined;
  sessionStorage.setItem(key, text);
  return readDraft(text);
}

/** Storage may be refused or full; whoever asks is told by what comes back. */
function guarded<Done>(act: () => Done): Done | undefined {
  try {
    return act();
  } catch {
    return undefined;
  }
}

function readDraft(text: string): EditInHand | undefined {
  const read: unknown = JSON.parse(text);
  if (!isRecord(read) || !isRecord(read.place)) return undefined;
  const { place } = read;
  const texts = [place.sheet, place.part, place.item, place.field, read.kind, read.held, read.draft];
  const isDraft = texts.every((one) => typeof one === 'string') && isView(read.units);
  return isDraft ? (read as unknown as EditInHand) : undefined;
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

const isView = (value: unknown): boolean => value === 'written' || value === 'SI' || value === 'US';
