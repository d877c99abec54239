import { cellContent, writtenAt } from '../../editing/cell-content.ts';
import type { EditInHand } from '../../session/edit-in-hand.ts';
import { type CellPlace, samePlace } from '../../session/place.ts';
import type { Session } from '../../session/session.ts';
import type { ActiveCell } from '../place/active-cell.ts';
import type { Command } from '../place/keys.ts';
import type { Commit } from './cell-edit.ts';

/** What editing the active cell needs of its page. */
interface Host {
  readonly session: Session;
  readonly refuse: (sentences: readonly string[]) => void;
  readonly showPlace: () => void;
  readonly wantFocus: () => void;
}

/** Begins what is typed into the active cell of a page, takes it in as it is composed, and ends it. */
export class ActiveEdit {
  readonly #host: Host;
  readonly #active: ActiveCell;
  /** Where an input method composes a text. */
  #composed: CellPlace | undefined;
  /** The calculated cell of a table where the person types in vain: what follows is not for its column either. */
  #inVain: CellPlace | undefined;

  constructor(host: Host, active: ActiveCell) {
    this.#host = host;
    this.#active = active;
  }

  /** What is being typed into the active cell. */
  get #edit(): EditInHand | undefined {
    const { hand, sheet } = this.#host.session;
    return hand?.place.sheet === sheet ? hand : undefined;
  }

  /** Starts editing the active cell, of a calculated column its formula; `seed` replaces what it holds. */
  start(seed?: string): void {
    const { place } = this.#active;
    if (!place) {
      if (seed !== undefined) this.#host.refuse(['no cell is chosen here; click one, or press an arrow key']);
      return;
    }
    const { session } = this.#host;
    // A number typed by chance must not replace the formula of a whole column.
    if (seed !== undefined && writtenAt(session.notebook.book, place) !== place) {
      this.#inVain = place;
      this.#host.refuse(['this cell is calculated; F2 opens the formula of its column']);
      return;
    }
    if (session.beginEdit(place, seed)) this.#active.anchor = undefined;
    this.#host.showPlace();
  }

  /** Takes into the active cell what an input method has composed so far, in place of what the cell holds. */
  compose(text: string, done: boolean): void {
    const { place } = this.#active;
    const { session } = this.#host;
    if (!done) this.#composed ??= place;
    const stayed = samePlace(this.#composed, place);
    if (done) this.#composed = undefined;
    // What was entered on the way elsewhere is not begun again there.
    if (!place || !stayed) return;
    if (cellContent(session.notebook.book, place).kind === 'choice') {
      // An option is looked for once the letters are there.
      if (done && text !== '') this.start(text);
      return;
    }
    if (!this.#edit && !done && text !== '') this.start('');
    if (!samePlace(this.#edit?.place, place)) return;
    if (done && text === '') this.cancel();
    else session.composeDraft(text, done);
  }

  /** Enters what is in hand, and goes on from its cell. */
  commit({ move, offered }: Commit): void {
    const edit = this.#edit;
    const { session } = this.#host;
    if (!edit || !session.endEdit(offered ? 'offer' : 'enter')) return;
    if (move !== 'stay') {
      this.#active.moveOn(move, edit.kind);
      return;
    }
    if (samePlace(edit.place, session.place)) this.#host.wantFocus();
    this.#host.showPlace();
  }

  /** Lets go of what is in hand. */
  cancel(): void {
    this.#host.session.endEdit('escape');
    this.#host.wantFocus();
    this.#host.showPlace();
  }

  /** Takes a key that goes on with what is typed in vain; true if it was one. */
  typesOn({ key }: KeyboardEvent, { kind }: Command): boolean {
    if (!this.#isTypedOn(key, kind)) {
      this.#inVain = undefined;
      return false;
    }
    this.start(key);
    return true;
  }

  /** Whether a key goes on with what is typed into a calculated cell: its letters and spaces, Enter after them, corrections. */
  #isTypedOn(key: string, kind: Command['kind']): boolean {
    const { place } = this.#active;
    if (!place || writtenAt(this.#host.session.notebook.book, place) === place) return false;
    if (!samePlace(place, this.#inVain)) return kind === 'edit' && key === ' ';
    return kind === 'clear' || (kind === 'edit' && key !== 'F2');
  }

  /** Takes note that the person has gone to a cell: what is typed there is a new text. */
  goneOn(): void {
    this.#inVain = undefined;
  }
}
