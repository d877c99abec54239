import type { Outcome } from '../../diagnostics/index.ts';
import { type Book, openBook, writeBook } from '../../document/index.ts';

const extension = '.quaybook.json';
const kind = { description: 'Quaybook', accept: { 'application/json': ['.json'] } } as const;

interface WritableFile {
  readonly write: (text: string) => Promise<void>;
  readonly close: () => Promise<void>;
}
/** A file the person chose; saving again writes it without asking. */
export interface FileHandle {
  readonly name: string;
  readonly getFile: () => Promise<File>;
  readonly createWritable: () => Promise<WritableFile>;
}
interface Pickers {
  readonly showOpenFilePicker?: (options: object) => Promise<readonly FileHandle[]>;
  readonly showSaveFilePicker?: (options: object) => Promise<FileHandle>;
}

/** The name a book's file gets: its project, in characters every system takes. */
export function fileName({ title }: Book): string {
  const words = (title.project || title.subject || 'book').normalize('NFC').replace(/[^\p{L}\p{N}]+/gu, '-');
  return `${words.replace(/^-+|-+$/g, '').toLowerCase() || 'book'}${extension}`;
}

/** Asks for a file and opens it; undefined where the person chose none. */
export async function chooseBookFile(): Promise<Outcome<Book> | undefined> {
  const { showOpenFilePicker } = window as unknown as Pickers;
  if (!showOpenFilePicker) return readThroughInput();
  try {
    const [handle] = await showOpenFilePicker({ types: [kind], excludeAcceptAllOption: false });
    return handle && (await readBookFile(await handle.getFile()));
  } catch (error) {
    if (isAborted(error)) return undefined;
    throw error;
  }
}

/** Opens a file that was chosen or dropped. */
export async function readBookFile(file: File): Promise<Outcome<Book>> {
  const opened = openBook(await file.text());
  return opened.ok ? { ok: true, value: opened.value.book } : opened;
}

/**
 * Writes a book to a file: to the handle, to one the person picks, or as a download where the browser has no pickers.
 * Gives the handle to save to again; undefined for a download or where the person chose none.
 */
export async function saveBookFile(book: Book, handle?: FileHandle): Promise<FileHandle | undefined> {
  const { showSaveFilePicker } = window as unknown as Pickers;
  const text = writeBook(book);
  if (!showSaveFilePicker) {
    download(fileName(book), text);
    return undefined;
  }
  try {
    const chosen = handle ?? (await showSaveFilePicker({ suggestedName: fileName(book), types: [kind] }));
    const file = await chosen.createWritable();
    await file.write(text);
    await file.close();
    return chosen;
  } catch (error) {
    if (isAborted(error)) return handle;
    throw error;
  }
}

/** Offers a text as a download. */
export function download(name: string, text: string, type = 'application/json'): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
}

function readThroughInput(): Promise<Outcome<Book> | undefined> {
  return new Promise((resolve, reject) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,application/json';
    input.addEventListener('cancel', () => resolve(undefined));
    input.addEventListener('change', () => {
      const file = input.files?.[0];
      if (file) readBookFile(file).then(resolve, reject);
      else resolve(undefined);
    });
    input.click();
  });
}

function isAborted(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'AbortError';
}
