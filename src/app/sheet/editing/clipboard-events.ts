import { carriedFrom, unitOnScreen } from '../../editing/carried-unit.ts';
import { cellValueText } from '../../editing/cell-value-text.ts';
import {
  CELLS_TYPE,
  type CopiedCells,
  readCells,
  readCopied,
  writeCells,
} from '../../editing/clipboard-text.ts';
import { findPlace } from '../../editing/find-place.ts';
import { insertRows } from '../../editing/line-edits.ts';
import { copyOfRow, freshFor } from '../../editing/new-items.ts';
import { pasteCells } from '../../editing/paste.ts';
import { pasteNamed } from '../../editing/paste-named.ts';
import { type CommandHost, carryOut, selectedCells, told } from '../place/commands.ts';
import { isWholeRows } from '../place/range.ts';

type Host = CommandHost & HTMLElement & { readonly editing: boolean };

/** Copy, cut and paste on a page; not in the title block, which lies in a slot of it. */
export class ClipboardEvents {
  readonly #host: Host;

  constructor(host: Host) {
    this.#host = host;
    host.addEventListener('copy', this.#copy);
    host.addEventListener('cut', this.#cut);
    host.addEventListener('paste', this.#paste);
  }

  readonly #copy = (event: ClipboardEvent): void => {
    if (event.target !== this.#host || this.#host.editing || !event.clipboardData) return;
    const selected = selectedCells(this.#host);
    if (selected.length === 0) return;
    event.preventDefault();
    const { notebook, units } = this.#host.session;
    const taken = selected.map((row) => row.map((place) => carriedFrom(notebook, place)));
    const copied: CopiedCells = {
      cells: taken.map((row) => row.map(({ text }) => text)),
      units: taken.map((row) => row.map(({ unit }) => unit ?? null)),
      ...this.#wholeLines(),
    };
    event.clipboardData.setData(
      'text/plain',
      writeCells(selected.map((row) => row.map((place) => cellValueText(notebook, place, units)))),
    );
    event.clipboardData.setData(CELLS_TYPE, JSON.stringify(copied));
  };

  /** The lines themselves, where the range holds nothing but whole lines. */
  #wholeLines(): Pick<CopiedCells, 'lines'> {
    const { range, map, session } = this.#host;
    if (!range || !isWholeRows(map, range)) return {};
    const lines = selectedCells(this.#host).map((row) => {
      const found = row[0] && findPlace(session.notebook.book, row[0]);
      return found?.kind === 'row' ? found.row : undefined;
    });
    const known = lines.filter((line) => line !== undefined);
    return known.length === lines.length ? { lines: known } : {};
  }

  readonly #cut = (event: ClipboardEvent): void => {
    if (event.target !== this.#host || this.#host.editing) return;
    const whole = this.#wholeLines().lines !== undefined;
    this.#copy(event);
    carryOut(this.#host, { kind: whole ? 'delete lines' : 'clear' });
  };

  readonly #paste = (event: ClipboardEvent): void => {
    const { place, session } = this.#host;
    if (event.target !== this.#host || this.#host.editing || !event.clipboardData || !place) return;
    const own = event.clipboardData.getData(CELLS_TYPE);
    const copied = own === '' ? undefined : readCopied(own);
    const text = event.clipboardData.getData('text/plain');
    if (!copied && text === '') return;
    event.preventDefault();
    if (copied?.lines) {
      this.#pasteLines(copied.lines);
      return;
    }
    const named = copied ? undefined : pasteNamed(session.notebook, this.#topLeft(), session.units, text);
    if (named) {
      if (!told(this.#host, named) || !named.ok) return;
      const { edit, remarks } = named.value;
      if (told(this.#host, session.apply(edit)) && remarks.length > 0)
        this.#host.refuse(remarks.map(({ message, hints }) => [message, ...hints].join('; ')));
      return;
    }
    const { map } = this.#host;
    const index = map.indexOf(this.#topLeft());
    const first = map.rowAt(index);
    const at = first?.fields.indexOf(this.#topLeft().field) ?? 0;
    const edit = pasteCells(
      session.notebook.book,
      this.#topLeft(),
      copied
        ? { ...copied, origin: 'own' }
        : {
            cells: readCells(text),
            unitAt: (to) => unitOnScreen(session.notebook, to, session.units),
            origin: 'foreign',
          },
      (down, right) => {
        const row = map.rowAt(index + down);
        const field = row?.fields[row.fields.length === 1 ? right : at + right];
        return row && field !== undefined
          ? { sheet: map.sheet, part: row.part, item: row.item, field }
          : undefined;
      },
    );
    if (told(this.#host, edit) && edit.ok) told(this.#host, session.apply(edit.value));
  };

  #topLeft() {
    const first = selectedCells(this.#host)[0]?.[0];
    if (!first) throw new Error('a paste needs a cell to go to');
    return first;
  }

  #pasteLines(lines: NonNullable<CopiedCells['lines']>): void {
    const { session, place } = this.#host;
    const { book } = session.notebook;
    const sheet = book.sheets.find(({ key }) => key === session.sheet);
    if (!sheet) return;
    const fresh = freshFor(book, sheet);
    const rows = lines.map((line) => copyOfRow(line, fresh));
    const label = rows.length === 1 ? 'paste a line' : `paste ${rows.length} lines`;
    const change = insertRows(book, session.sheet, place, rows, fresh, label);
    if (change && told(this.#host, session.apply(change.edit)) && change.place) this.#host.goTo(change.place);
  }
}
