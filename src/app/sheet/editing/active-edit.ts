import type { Book, Statement } from '../../../document/index.ts';
import type { Side } from '../../../notebook/index.ts';
import { cellContent } from '../../editing/cells/cell-content.ts';
import { statementAt, targetsAt } from '../../editing/cells/state-target.ts';
import { sideSaid } from '../../editing/cells/state-value.ts';
import { findPlace } from '../../editing/find-place.ts';
import type { Commit } from '../../editor/cell-edit.ts';
import type { Session } from '../../session/session.ts';
import type { EditInHand } from '../../view-model/edit-in-hand.ts';
import { type CellPlace, isOffPage, samePlace } from '../../view-model/place.ts';
import type { ActiveCell } from '../place/active-cell.ts';
import type { Command } from '../place/keys.ts';

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
  /** The cell of a series where the person types in vain: what follows is not for its column either. */
  #inVain: CellPlace | undefined;

  constructor(host: Host, active: ActiveCell) {
    this.#host = host;
    this.#active = active;
  }

  /** What is being typed into the active cell. */
  get #edit(): EditInHand | undefined {
    const { hand, sheet } = this.#host.session;
    return hand?.place.sheet === sheet && !isOffPage(hand.place) ? hand : undefined;
  }

  /** Starts editing the active cell, of a calculated column its formula; `seed` replaces what it holds. */
  start(seed?: string): void {
    const { place } = this.#active;
    if (!place) {
      if (seed !== undefined) this.#host.refuse(['no cell is chosen here; click one, or press an arrow key']);
      return;
    }
    const { session } = this.#host;
    if (seed !== undefined && isOfSeries(session.notebook.book, place)) {
      this.#inVain = place;
      this.#host.refuse(['a series makes this row; F2 opens the formula of its column']);
      return;
    }
    if (session.beginEdit(place, seed)) this.#active.anchor = undefined;
    else if (!session.hand) this.#host.refuse([takesNothing(session.notebook.book, place)]);
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
    const before = edit && this.#statement(edit).statement;
    if (!edit || !session.endEdit(offered ? 'offer' : 'enter')) return;
    const { statement, side } = this.#statement(edit);
    // Why a value was stated is asked in the same cell, before the person goes down from it.
    const asks = move === 'down' && edit.kind !== 'reason' && statement !== before;
    if (asks && statement && session.beginEdit(edit.place, undefined, 'reason', side)) {
      this.#host.showPlace();
      return;
    }
    if (move !== 'stay') {
      this.#active.moveOn(move, edit.kind);
      return;
    }
    if (samePlace(edit.place, session.place)) this.#host.wantFocus();
    this.#host.showPlace();
  }

  /** What is stated where something was typed. */
  #statement({ place, side, draft }: EditInHand): { readonly statement?: Statement; readonly side?: Side } {
    const of = side ?? sideSaid(draft);
    const statement = statementAt(this.#host.session.notebook.book, place, of);
    return { ...(statement && { statement }), ...(of && { side: of }) };
  }

  /** Lets go of what is in hand. */
  cancel(): void {
    this.#host.session.endEdit('escape');
    this.#host.wantFocus();
    this.#host.showPlace();
  }

  /** Takes a key that goes on with what is typed in vain; true if it was one. */
  typesOn({ key }: KeyboardEvent, { kind }: Command): boolean {
    // A space in front of a number that is typed is no key that opens the formula of a whole column.
    if (kind === 'edit' && key === ' ' && this.#isStatedCell()) {
      this.start('');
      return true;
    }
    if (!this.#isTypedOn(key, kind)) {
      this.#inVain = undefined;
      return false;
    }
    this.start(key);
    return true;
  }

  /** Whether a key goes on with what is typed into a cell of a series: its letters and spaces, Enter after them, corrections. */
  #isTypedOn(key: string, kind: Command['kind']): boolean {
    const { place } = this.#active;
    if (!place || !isOfSeries(this.#host.session.notebook.book, place)) return false;
    if (!samePlace(place, this.#inVain)) return kind === 'edit' && key === ' ';
    return kind === 'clear' || (kind === 'edit' && key !== 'F2');
  }

  /** Whether the active cell is one of a calculated column, into which a value is typed. */
  #isStatedCell(): boolean {
    const { place } = this.#active;
    return place !== undefined && targetsAt(this.#host.session.notebook.book, place)[0]?.kind === 'cell';
  }

  /** Takes note that the person has gone to a cell: what is typed there is a new text. */
  goneOn(): void {
    this.#inVain = undefined;
  }
}

/** Why nothing can be typed at a place. */
function takesNothing(book: Book, place: CellPlace): string {
  const found = findPlace(book, place);
  const line = found?.kind === 'row' ? found.row : found?.kind === 'column' ? found.column : undefined;
  if (!line || !('methods' in line) || !line.methods) return 'nothing can be typed here';
  return found?.kind === 'column'
    ? `${line.name} has a method for each kind of row; F2 on a cell of the column opens the one that is used there`
    : `${line.name} has several methods, and none of them is in use while ${line.by ?? 'nothing'} does not say which`;
}

/** Whether a place is a cell that is computed and cannot be stated: its table gets its rows anew each time. */
function isOfSeries(book: Book, place: CellPlace): boolean {
  const found = findPlace(book, place);
  return found?.kind === 'cell' && found.column.kind !== 'given' && targetsAt(book, place).length === 0;
}
