import {
  closeBrackets,
  closeBracketsKeymap,
  completionKeymap,
  completionStatus,
} from '@codemirror/autocomplete';
import { history, historyKeymap, standardKeymap } from '@codemirror/commands';
import { bracketMatching } from '@codemirror/language';
import { EditorState } from '@codemirror/state';
import { EditorView, keymap, tooltips } from '@codemirror/view';
import { css, html, LitElement, type TemplateResult } from 'lit';
import type { Fix } from '../../../diagnostics/index.ts';
import type { Trial } from '../../../notebook/index.ts';
import { oneLine } from '../../editing/cells/enter-draft.ts';
import type { SelectedText } from '../../view-model/edit-in-hand.ts';
import type { Commit, Typed } from '../cell-edit.ts';
import { Below } from '../fields/below.ts';
import { fieldStyles } from '../fields/field-styles.ts';
import { onLeave } from '../fields/on-leave.ts';
import { makeRoomBelow } from '../fields/room-below.ts';
import { shieldKey } from '../fields/shield-key.ts';
import { type Note, takeable } from '../notes/note.ts';
import { drawNote, isRefusalSaid, noteStyles } from '../notes/note-view.ts';
import { type Completer, formulaCompletion } from './completion-list.ts';
import { formulaKeys } from './formula-keys.ts';
import { formulaLanguage } from './formula-language.ts';
import { isWordUnknown, type Writing } from './formula-note.ts';
import { formulaTheme } from './formula-theme.ts';
import { FormulaTrial, type Try } from './formula-trial.ts';

/** What a formula field asks of the book. */
export interface FormulaService {
  readonly complete: Completer;
  readonly tryIt: Try;
  /** The line below. */
  readonly note: (trial: Trial, writing: Writing) => Note | undefined;
}

/** What the note and a list of completions take below a formula (px). */
const ROOM_BELOW = 320;

/** A box whose size is given, so that the browser lays out nothing around it for a letter. */
const editorStyles = css`
  .editor {
    contain: strict;
    height: var(--formula-height, 27px);
    border-radius: var(--radius);
    outline: 2px solid var(--accent);
    outline-offset: -1px;
  }
`;

/** The editor of a formula: one line that grows, coloured, completed and tried as it is typed. */
export class QuayFormulaField extends LitElement {
  static override properties = {
    label: { attribute: false },
    remarks: { attribute: false },
    text: { attribute: false },
    selected: { attribute: false },
    service: { attribute: false },
    note: { state: true },
  };

  static override styles = [fieldStyles, noteStyles, editorStyles];

  declare label: string;
  /** What is typed so far; the editor is asked for it once, when it is first drawn. */
  declare text: string;
  /** What is selected at first; undefined for the caret at the end. */
  declare selected: SelectedText | undefined;
  declare service: FormulaService;
  /** Why what is typed was refused, until it is changed. */
  declare remarks: readonly string[] | undefined;
  declare note: Note | undefined;
  #view: EditorView | undefined;
  #trial: FormulaTrial | undefined;
  /** The box of the formula grows by whole lines, before the frame that shows them. */
  readonly #grown = new ResizeObserver(([entry]) => {
    const height = entry?.borderBoxSize[0]?.blockSize;
    if (height !== undefined) this.style.setProperty('--formula-height', `${height}px`);
  });
  readonly #below = new Below(this, () => {
    const field = this.renderRoot.querySelector('.editor');
    const popover = this.renderRoot.querySelector<HTMLElement>('.below');
    return field && popover ? { field, popover } : undefined;
  });

  override render(): TemplateResult {
    return html`<div class="editor" @keydown=${this.#shield}></div>
      <div popover="manual" class="below ${this.note ? '' : 'bare'}" @mousedown=${(event: Event) => event.preventDefault()}>
        ${drawNote(this.note, this.#takeRemedy, this.remarks)}
      </div>
      <div popover="manual" class="lists"></div>`;
  }

  /** Whether the line below says why what is typed was refused. */
  get isRefusalSaid(): boolean {
    return isRefusalSaid(this.renderRoot);
  }

  override firstUpdated(): void {
    const parent = this.renderRoot.querySelector('.editor');
    const lists = this.renderRoot.querySelector<HTMLElement>('.lists');
    if (!parent || !lists) throw new Error('the formula field has no room for its editor');
    lists.showPopover();
    const doc = oneLine(this.text);
    const trial = new FormulaTrial(this.service.tryIt);
    const view = new EditorView({
      parent,
      root: this.renderRoot as ShadowRoot,
      state: EditorState.create({
        doc,
        selection: {
          anchor: Math.min(this.selected?.from ?? doc.length, doc.length),
          head: Math.min(this.selected?.to ?? doc.length, doc.length),
        },
        extensions: [
          formulaKeys({
            commit: (move) => this.#leave({ move }),
            cancel: () => {
              this.dispatchEvent(new CustomEvent('cancel'));
            },
            fix: () => {
              this.#tell(trial);
              const [first] = this.note ? takeable(this.note) : [];
              if (first) this.#takeRemedy(first);
              return first !== undefined;
            },
            unfinished: ({ state }) => isWordUnknown(trial.of(state), state.selection.main.head),
          }),
          formulaLanguage,
          formulaCompletion((text, at, asked) => this.service.complete(text, at, asked)),
          bracketMatching(),
          closeBrackets(),
          history(),
          keymap.of([...closeBracketsKeymap, ...completionKeymap, ...historyKeymap, ...standardKeymap]),
          EditorView.lineWrapping,
          EditorView.clipboardInputFilter.of(oneLine),
          EditorView.contentAttributes.of((view) => ({
            role: 'combobox',
            'aria-label': this.label,
            'aria-describedby': 'note',
            'aria-expanded': String(completionStatus(view.state) === 'active'),
          })),
          EditorView.updateListener.of((update) => {
            const relisted = completionStatus(update.startState) !== completionStatus(update.state);
            if (update.docChanged) this.#say(update.state);
            if (update.docChanged) trial.underlineAtRest(update.view);
            if (completionStatus(update.state) === 'active') this.#keepListOff(update.view);
            if (update.docChanged || update.selectionSet || relisted)
              this.#below.drawSoon(() => this.#tell(trial));
            else if (update.geometryChanged) this.#below.placeSoon();
          }),
          EditorView.domEventHandlers({ blur: this.#blur, beforeinput: typeOver }),
          tooltips({ position: 'fixed', parent: lists }),
          formulaTheme,
        ],
      }),
    });
    this.#view = view;
    this.#trial = trial;
    this.#grown.observe(view.contentDOM);
    // One line with a list of completions is a combobox, which has no such attribute.
    view.contentDOM.removeAttribute('aria-multiline');
    this.#tell(trial);
    trial.underline(view);
    view.focus();
    // Without room below, the list of completions would stand on the lines above.
    makeRoomBelow(this, ROOM_BELOW);
  }

  override focus(): void {
    this.#view?.focus();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#grown.disconnect();
    this.#trial?.stop();
    this.#view?.destroy();
    this.#view = undefined;
  }

  /** A list that opens upwards all the same stands above the whole formula, not above the caret's line. */
  #keepListOff(view: EditorView): void {
    if (view.contentHeight < 1.5 * view.defaultLineHeight) return;
    view.requestMeasure({
      key: this,
      read: () => {
        const caret = view.coordsAtPos(view.state.selection.main.head);
        return caret ? caret.top - view.dom.getBoundingClientRect().top : 0;
      },
      write: (above) => this.style.setProperty('--lines-above', `${above}px`),
    });
  }

  /** Says below what is wrong, or what the formula comes to. */
  #tell(trial: FormulaTrial): void {
    if (!this.#view) return;
    const { state } = this.#view;
    const listed = completionStatus(state) !== null;
    this.note = this.service.note(trial.of(state), { caret: state.selection.main.head, listed });
  }

  // What is typed here is not for the page's keys; the editor has had its turn when the event comes by.
  readonly #shield = (event: KeyboardEvent): void => shieldKey(event);

  #say({ doc, selection }: EditorState): void {
    const { from, to } = selection.main;
    const detail = { text: doc.toString(), selected: { from, to } };
    this.dispatchEvent(new CustomEvent<Typed>('typed', { detail }));
  }

  readonly #takeRemedy = (what: Fix | 'offer'): void => {
    if (what === 'offer') {
      this.#leave({ move: 'stay', offered: true });
      return;
    }
    const { from, to, insert } = what;
    this.#view?.dispatch({
      changes: { from, to, insert },
      selection: { anchor: from + insert.length },
      userEvent: 'input',
      scrollIntoView: true,
    });
    this.#view?.focus();
  };

  readonly #blur = (): void => onLeave(this, () => this.dispatchEvent(new CustomEvent('leave')));

  #leave(detail: Commit): void {
    this.dispatchEvent(new CustomEvent<Commit>('commit', { detail }));
  }
}

/**
 * Types over a selection here: browsers would carry the colours of what they delete over to what is typed as a style
 * of its own, which the page's security policy reports.
 */
function typeOver(event: InputEvent, view: EditorView): boolean {
  const { data, inputType, isComposing } = event;
  const { from, to } = view.state.selection.main;
  if (inputType !== 'insertText' || isComposing || data === null) return false;
  event.preventDefault();
  const insert = () => view.state.update(view.state.replaceSelection(data), { userEvent: 'input.type' });
  const handlers = view.state.facet(EditorView.inputHandler);
  if (!handlers.some((handles) => handles(view, from, to, data, insert))) view.dispatch(insert());
  return true;
}

customElements.define('quay-formula-field', QuayFormulaField);
