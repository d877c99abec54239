import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { InputItem } from '../../notebook/index.ts';
import { labelOf } from '../../record/index.ts';
import { entryForScreen, entryFromScreen } from '../editing/cells/carry-unit.ts';
import { choiceOptions } from '../editing/choices/choice-options.ts';
import type { Session, SessionEvent } from '../session/session.ts';
import { itemAt, placeOfId } from '../view-model/places.ts';
import { nudgedEntry } from './nudge.ts';
import { TRIAL_CELL_LIMIT, tableCells, tryValue, type ValueTrial } from './value-trial.ts';

type Host = ReactiveControllerHost & { readonly session: Session; readonly renderRoot: ParentNode };

/**
 * Holds the value that is being tried for the line in hand. It ends when the person keeps it, drops it, or turns to
 * another line, sheet or book, or when the book changes under it; what became of it is told until the next move.
 */
export class TrialController implements ReactiveController {
  readonly #host: Host;
  #session: Session | undefined;
  #leave: (() => void) | undefined;
  #trial: ValueTrial | undefined;
  #words: string | undefined;
  #refusal: string | undefined;
  /** What stands in the field and is not tried yet. */
  #typed: string | undefined;
  /** Whether the words were said in this task: a key that commits an edit moves on as well. */
  #justSaid = false;

  constructor(host: Host) {
    this.#host = host;
    host.addController(this);
  }

  /** What is tried, if anything is. */
  get trial(): ValueTrial | undefined {
    return this.#trial;
  }

  /** What became of the last trial, until the person moves on. */
  get words(): string | undefined {
    return this.#words;
  }

  /** Why what was typed last cannot be tried. */
  get refusal(): string | undefined {
    return this.#refusal;
  }

  /** What was typed and is not tried yet: nothing is said of what would follow from it. */
  get typed(): string | undefined {
    return this.#typed;
  }

  hostConnected(): void {
    this.#follow(this.#host.session);
  }

  hostUpdate(): void {
    if (this.#session !== this.#host.session) this.#follow(this.#host.session);
  }

  hostDisconnected(): void {
    this.#leave?.();
    this.#leave = undefined;
    this.#session = undefined;
    this.#trial = undefined;
    this.#words = undefined;
  }

  #follow(session: Session): void {
    this.#leave?.();
    this.#session = session;
    this.#trial = undefined;
    this.#typed = undefined;
    this.#leave = session.subscribe((event) => this.#hear(event));
  }

  #hear({ kind }: SessionEvent): void {
    if (kind !== 'place' && kind !== 'book') return;
    const { trial } = this;
    if (kind === 'place' && trial !== undefined && this.#isInHand(trial.id)) return;
    this.#typed = undefined;
    const words = trial && this.farewell(kind === 'book' ? 'the book was changed' : 'you left the line');
    if (words === undefined && this.#justSaid) return;
    if (words === this.#words && this.#refusal === undefined) return;
    this.#say(words);
    this.#refusal = undefined;
    this.#trial = undefined;
    this.#host.requestUpdate();
  }

  #say(words: string | undefined): void {
    this.#words = words;
    this.#justSaid = words !== undefined;
    setTimeout(() => {
      this.#justSaid = false;
    });
  }

  #isInHand(id: string): boolean {
    const { session } = this.#host;
    return !session.overview && itemAt(session.notebook, session.place)?.id === id;
  }

  /** What to say of the trial when it ends unkept, and why it does if not by choice; undefined while nothing is tried. */
  farewell(why?: string): string | undefined {
    const because = why === undefined ? '' : `, for ${why}`;
    const { trial } = this;
    const { notebook } = this.#host.session;
    const item = trial && notebook.model.items.get(trial.id);
    if (!trial) return undefined;
    if (item?.kind !== 'input') return `What was tried is dropped${because}; its line is gone.`;
    return `${labelOf(item)}: ${this.#shown(item, trial.entry)} was tried and is dropped${because}; the book has ${this.#shown(item, item.row.entry)}.`;
  }

  /** Notes what stands in the field while it is typed. */
  note(text: string): void {
    this.#typed = text;
    this.#refusal = undefined;
    this.#host.requestUpdate();
  }

  /** Tries what was typed in the field, or what was chosen from the list. */
  type(item: InputItem, text: string): void {
    const place = placeOfId(this.#host.session.notebook, item.id);
    if (!place) return;
    const { notebook, units } = this.#host.session;
    this.try(item, item.row.kind === 'given' ? entryFromScreen(notebook, place, units, text.trim()) : text);
  }

  /** Tries the entry so many steps larger, or smaller. */
  step(item: InputItem, steps: number): void {
    const entry = nudgedEntry(this.entryOf(item), steps);
    if (entry !== undefined) this.try(item, entry);
  }

  /** The entry that is tried for a line, else its own. */
  entryOf(item: InputItem): string {
    return this.#trial?.id === item.id ? this.#trial.entry : item.row.entry;
  }

  /** Tries an entry. */
  try(item: InputItem, entry: string): void {
    const { notebook } = this.#host.session;
    const place = placeOfId(notebook, item.id);
    if (!place) return;
    if (!this.#isInHand(item.id)) {
      if (entry !== item.row.entry)
        this.#words = `${labelOf(item)}: ${entry} was not tried, for you left the line.`;
      this.#host.requestUpdate();
      return;
    }
    this.#words = undefined;
    this.#refusal = undefined;
    this.#typed = undefined;
    if (this.#trial || entry !== item.row.entry) {
      const cells = this.#trial ? 0 : tableCells(notebook);
      if (cells > TRIAL_CELL_LIMIT)
        this.#refusal =
          `The tables of this book have ${cells} cells. A trial computes the whole book beside itself, up to ` +
          `${TRIAL_CELL_LIMIT} cells: type the value into the line, and Ctrl+Z takes it back.`;
      else {
        const tried = tryValue(notebook, { place, id: item.id }, entry, this.#trial);
        if (tried.ok) this.#trial = tried.value;
        else this.#refusal = tried.problems[0]?.message;
      }
    }
    this.#host.requestUpdate();
  }

  /** Puts the value tried into the book, as one edit that undo takes back. */
  keep(): void {
    const { trial } = this;
    const { session } = this.#host;
    const item = trial && session.notebook.model.items.get(trial.id);
    if (!trial || item?.kind !== 'input') return;
    const shown = this.#shown(item, trial.entry);
    this.#trial = undefined;
    const applied = session.apply(trial.edit);
    if (applied.ok) this.#words = `${labelOf(item)}: ${shown} is in the book; Ctrl+Z takes it back.`;
    else {
      this.#trial = trial;
      this.#refusal = applied.problems[0]?.message;
    }
    this.#backToField();
  }

  /** Ends the trial; the book has what it had. */
  drop(): void {
    this.#words = this.farewell();
    this.#refusal = undefined;
    this.#typed = undefined;
    this.#trial = undefined;
    this.#backToField();
  }

  /** The buttons that ended the trial are gone; the focus goes where the next one begins. */
  #backToField(): void {
    this.#host.requestUpdate();
    void this.#host.updateComplete.then(() =>
      this.#host.renderRoot.querySelector<HTMLElement>('.tried')?.focus(),
    );
  }

  #shown(item: InputItem, entry: string): string {
    return entryWords(this.#host.session, item, entry);
  }
}

/** An entry of a line as the page shows it: in words of its choice, or with the unit it is read in. */
export function entryWords({ notebook, units }: Session, item: InputItem, entry: string): string {
  const place = placeOfId(notebook, item.id);
  if (entry.trim() === '') return 'blank';
  if (!place) return entry;
  if (item.row.kind === 'choice')
    return choiceOptions(notebook, place).find(({ value }) => value === entry)?.label ?? entry;
  const written = entryForScreen(notebook, place, units, entry);
  const { unit } = item.row;
  const bare = written === entry && /^[\d.,\s−+-]+$/.test(entry);
  return bare && unit !== undefined && unit !== '' && unit !== '-' ? `${written} ${unit}` : written;
}
