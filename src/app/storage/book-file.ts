import type { Outcome } from '../../diagnostics/index.ts';
import { BOOK_BYTE_LIMIT, type Book, openBook, writeBook } from '../../document/index.ts';
import { bookName } from './book-name.ts';
import { download } from './download.ts';
import { BOOK_EXTENSION, fileNameOf } from './file-name.ts';
import { readTextFile } from './read-text-file.ts';

const kind = { description: 'Quaybook', accept: { 'application/json': ['.json'] } } as const;

interface WritableFile {
  readonly write: (text: string) => Promise<void>;
  readonly close: () => Promise<void>;
  readonly abort?: () => Promise<void>;
}
/** A file the person chose; saving again writes it without asking. */
interface FileHandle {
  readonly name: string;
  readonly getFile: () => Promise<File>;
  readonly createWritable: () => Promise<WritableFile>;
}
interface Pickers {
  readonly showOpenFilePicker?: (options: object) => Promise<readonly FileHandle[]>;
  readonly showSaveFilePicker?: (options: object) => Promise<FileHandle>;
}

/** Saves books as files; each book has a file of its own in hand. */
export interface BookFiles {
  /**
   * Writes a book to its file, to one the person picks, or as a download where the browser has no pickers. Gives the name
   * of the file; undefined where the person chose none.
   */
  readonly save: (id: string, book: Book) => Promise<string | undefined>;
}

/** No book has a file in hand yet. */
export function createBookFiles(): BookFiles {
  const handles = new Map<string, FileHandle>();
  /** The last write of each book: two at once would leave the file to the one that ends later, not to the newer book. */
  const writing = new Map<string, Promise<unknown>>();
  return {
    save: async (id, book) => {
      const { showSaveFilePicker } = window as unknown as Pickers;
      const text = writeBook(book);
      const suggestedName = fileNameOf(bookName(book), BOOK_EXTENSION);
      if (!showSaveFilePicker) {
        download(suggestedName, text);
        return suggestedName;
      }
      let handle = handles.get(id);
      try {
        handle ??= await showSaveFilePicker({ suggestedName, types: [kind] });
      } catch (error) {
        if (isAborted(error)) return undefined;
        throw error;
      }
      const chosen = handle;
      handles.set(id, chosen);
      const turn = (writing.get(id) ?? Promise.resolve()).then(() => writeFile(chosen, text));
      writing.set(
        id,
        turn.catch(() => undefined),
      );
      try {
        await turn;
      } catch (error) {
        // A file that could not be written is asked for again.
        if (handles.get(id) === chosen) handles.delete(id);
        throw error;
      }
      return chosen.name;
    },
  };
}

async function writeFile(handle: FileHandle, text: string): Promise<void> {
  const file = await handle.createWritable();
  try {
    await file.write(text);
  } catch (error) {
    // The file stays as it was.
    await file.abort?.();
    throw error;
  }
  await file.close();
}

/** Asks for a file and opens it; undefined where the person chose none. */
export async function chooseBookFile(): Promise<Outcome<Book> | undefined> {
  const { showOpenFilePicker } = window as unknown as Pickers;
  if (!showOpenFilePicker) return readThroughInput();
  try {
    const types = [{ ...kind, accept: { ...kind.accept, 'text/html': ['.html'] } }];
    const [handle] = await showOpenFilePicker({ types, excludeAcceptAllOption: false });
    return handle && (await readBookFile(await handle.getFile()));
  } catch (error) {
    if (isAborted(error)) return undefined;
    throw error;
  }
}

/** Opens a file that was chosen or dropped. */
export async function readBookFile(file: File): Promise<Outcome<Book>> {
  const read = await readTextFile(file, BOOK_BYTE_LIMIT);
  if (!read.ok) return read;
  const opened = openBook(read.value);
  return opened.ok ? { ok: true, value: opened.value.book } : opened;
}

function readThroughInput(): Promise<Outcome<Book> | undefined> {
  return new Promise((resolve, reject) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,.html,application/json,text/html';
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
