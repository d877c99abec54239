import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Book, Column } from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import type { TableCell } from '../../../tables/index.ts';
import { isLongText } from '../../editing/clipboard/long-text.ts';
import { type FoundRows, openRowsFinder, type RowsFinder, type RowsRequest } from './find-rows.ts';
import type { RowsOrder, RowsReply } from './rows-worker.ts';

/** How the reading of a text stands. */
export type RowsState =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading' }
  | { readonly kind: 'found'; readonly found: FoundRows }
  | { readonly kind: 'failed'; readonly reason: string };

/** Reads texts for tables: a short one at once, a long one in a worker, which a next request or the end stops. */
export class RowsReader implements ReactiveController {
  state: RowsState = { kind: 'none' };
  readonly #host: ReactiveControllerHost;
  #notebook: Notebook | undefined;
  #find: RowsFinder | undefined;
  #worker: Worker | undefined;
  #turn = 0;
  #cells = new Map<string, readonly TableCell[]>();

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  hostDisconnected(): void {
    this.begin(undefined);
  }

  /** Begins with the tables of a notebook, or ends with undefined: what is being read is given up. */
  begin(notebook: Notebook | undefined): void {
    this.#stop();
    this.#notebook = notebook;
    this.#find = undefined;
    this.state = { kind: 'none' };
  }

  /** Reads a text, in place of the one before; undefined for none. A short one is found when this returns. */
  read(request: RowsRequest | undefined): void {
    if (this.state.kind === 'reading') this.#stop();
    this.#turn += 1;
    this.#cells = new Map();
    if (!request || !this.#notebook) {
      this.state = { kind: 'none' };
    } else if (isLongText(request.text)) {
      this.state = { kind: 'reading' };
      this.#worker ??= this.#start(this.#notebook.book);
      this.#tell(this.#worker, { kind: 'read', turn: this.#turn, request });
    } else {
      this.#find ??= openRowsFinder(this.#notebook);
      this.state = { kind: 'found', found: this.#find(request) };
    }
  }

  #stop(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
  }

  #start(book: Book): Worker {
    const worker = new Worker(new URL('./rows-worker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', ({ data }: MessageEvent<RowsReply>) => {
      if (worker === this.#worker && data.turn === this.#turn) this.#hear(data);
    });
    worker.addEventListener('error', ({ message }) => {
      if (worker !== this.#worker) return;
      this.#stop();
      this.#conclude({ kind: 'failed', reason: message || 'the program that reads it could not be loaded' });
    });
    this.#tell(worker, { kind: 'book', book: withBlankRows(book) });
    return worker;
  }

  #tell(worker: Worker, order: RowsOrder): void {
    worker.postMessage(order);
  }

  #hear(reply: RowsReply): void {
    if (reply.kind === 'cells') this.#cells.set(reply.name, reply.cells);
    else if (reply.kind === 'failed') this.#conclude(reply);
    else this.#conclude({ kind: 'found', found: this.#withCells(reply.found) });
  }

  #withCells(found: FoundRows): FoundRows {
    const { read } = found;
    if (!read.ok) return found;
    return { ...found, read: { ...read, value: { ...read.value, cells: Object.fromEntries(this.#cells) } } };
  }

  #conclude(state: RowsState): void {
    this.state = state;
    this.#host.requestUpdate();
  }
}

/** A book whose rows are all blank: what stands in them is not needed to read others, and takes time to hand over. */
function withBlankRows(book: Book): Book {
  // Handed over once, however many columns it stands in.
  const blanks = new Map<number, readonly null[]>();
  const blank = ({ length }: { readonly length: number }): readonly null[] => {
    const known = blanks.get(length) ?? Array.from({ length }, () => null);
    blanks.set(length, known);
    return known;
  };
  const inColumn = (column: Column): Column =>
    column.kind === 'given' ? { ...column, chunks: column.chunks.map(blank) } : column;
  const sheets = book.sheets.map((sheet) => ({
    ...sheet,
    parts: sheet.parts.map((part) =>
      part.kind === 'table' ? { ...part, columns: part.columns.map(inColumn) } : part,
    ),
  }));
  return { ...book, sheets };
}
