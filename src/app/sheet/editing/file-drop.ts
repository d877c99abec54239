import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { reasonOf } from '../../storage/storage-error.ts';
import type { CellPlace } from '../../view-model/place.ts';

type Host = ReactiveControllerHost & {
  readonly placeAtPointer: (event: MouseEvent) => CellPlace | undefined;
  readonly refuse: (sentences: readonly string[]) => void;
  readonly dropText: (place: CellPlace | undefined, text: string) => void;
};

/** Files of books, which are opened from the start page. */
const BOOK = /\.json$/i;

/** Takes a file of rows that is dropped anywhere on an open book but into a field for files; a browser would leave the page for it. */
export class FileDrop implements ReactiveController {
  readonly #host: Host;

  constructor(host: Host) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    addEventListener('dragover', this.#over);
    addEventListener('drop', this.#drop);
  }

  hostDisconnected(): void {
    removeEventListener('dragover', this.#over);
    removeEventListener('drop', this.#drop);
  }

  readonly #over = (event: DragEvent): void => {
    if (bringsFiles(event)) event.preventDefault();
  };

  readonly #drop = (event: DragEvent): void => {
    if (event.defaultPrevented || !bringsFiles(event)) return;
    event.preventDefault();
    const [file, ...more] = event.dataTransfer?.files ?? [];
    if (!file) return;
    const place = this.#host.placeAtPointer(event);
    if (more.length > 0) this.#host.refuse(['nothing was taken: drop one file at a time']);
    else if (BOOK.test(file.name))
      this.#host.refuse([`${file.name} was not opened: a book is opened from the start page`]);
    else void this.#take(file, place);
  };

  async #take(file: File, place: CellPlace | undefined): Promise<void> {
    try {
      const { readTableFile } = await import('../../storage/read-table-file.ts');
      const read = await readTableFile(file);
      if (read.ok) this.#host.dropText(place, read.value.text);
      else this.#host.refuse(read.problems.map(({ message }) => `${file.name}: ${message}`));
    } catch (error) {
      this.#host.refuse([`${file.name} cannot be read: ${reasonOf(error)}`]);
    }
  }
}

/** Whether files are dragged, and not over a field that takes them itself. */
function bringsFiles(event: DragEvent): boolean {
  const [target] = event.composedPath();
  const isField = target instanceof Element && target.matches('input[type="file"]');
  return !isField && event.dataTransfer?.types.includes('Files') === true;
}
