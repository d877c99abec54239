import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Outcome } from '../../../diagnostics/index.ts';
import type { Edit } from '../../../document/index.ts';
import { type Item, type MethodItem, methodInForce } from '../../../notebook/index.ts';
import { labelOf, localName, refusalWords } from '../../../record/index.ts';
import {
  addMethod,
  beginMethods,
  chooseBy,
  dropMethod,
  keepOneMethod,
  type NewMethod,
  serveOptions,
  shiftMethod,
} from '../../editing/methods/change-methods.ts';
import { type Chooser, chooserAt, choosersFor, openOptions } from '../../editing/methods/choosers.ts';
import {
  lineCell,
  type MethodLine,
  methodForOthers,
  methodLineAt,
} from '../../editing/methods/method-line.ts';
import type { Commit } from '../../editor/cell-edit.ts';
import type { Session } from '../../session/session.ts';
import { SessionController } from '../../session/session-controller.ts';
import { cellEditor } from '../../sheet/editing/cell-editor.ts';
import type { CommandMenu } from '../../sheet/menu/command-menu.ts';
import { mathsStyles } from '../../style/maths-styles.ts';
import { drawSign } from '../../style/signs.ts';
import {
  type CellPlace,
  type MethodText,
  methodFieldOf,
  methodPlace,
  samePlace,
} from '../../view-model/place.ts';
import { itemAt, placeOfId } from '../../view-model/places.ts';
import { drawNumbers, drawSymbols } from '../formula-part.ts';
import { panelStyles } from '../panel-styles.ts';
import { begunBy, drawForm, type MethodForm, servingOf } from './method-form.ts';
import { type MethodDeeds, methodMenu } from './method-menu.ts';
import { methodsStyles } from './methods-styles.ts';
import { linesToFollow } from './options-left.ts';

/** A line or column with a formula. */
type Computed = Extract<Item, { checked: unknown }>;

/** A line with methods, as it is drawn. */
interface Shown {
  readonly item: Computed;
  readonly line: MethodLine;
}

const fieldWords: Readonly<Record<MethodText, string>> = {
  formula: 'formula',
  reference: 'source',
  note: 'note',
};

/**
 * The methods of the line or column in hand: the one in force with its numbers, the others folded, and all that is done
 * with them. A line of one formula is offered to be computed by methods.
 */
export class QuayMethods extends LitElement {
  static override properties = {
    session: { attribute: false },
    room: { attribute: false },
    form: { state: true },
    expanded: { state: true },
    refusal: { state: true },
  };
  static override styles = [mathsStyles, panelStyles, methodsStyles];

  declare session: Session;
  /** How many em of formula fit. */
  declare room: number;
  /** What is being decided, if anything is. */
  declare form: MethodForm | undefined;
  /** Whether the methods that are not in force are shown. */
  declare expanded: boolean;
  /** Why the last command could not be carried out. */
  declare refusal: string | undefined;
  /** The line that was drawn last. */
  #line: string | undefined;
  /** What was being typed here. */
  #edited: CellPlace | undefined;
  /** What takes the focus once it is drawn. */
  #wanted: string | undefined;

  constructor() {
    super();
    this.expanded = false;
    new SessionController(this, ({ kind }) => kind === 'hand' && this.#isConcerned);
    new SessionController(this, ({ kind }) => kind !== 'kept' && kind !== 'hand', 'after');
  }

  /** Whether what is in hand is written here, or was. */
  get #isConcerned(): boolean {
    const { hand } = this.session;
    return this.#edited !== undefined || (hand !== undefined && methodFieldOf(hand.place) !== undefined);
  }

  get #shown(): Shown | undefined {
    const { notebook, place } = this.session;
    const item = itemAt(notebook, place);
    const line = place && methodLineAt(notebook.book, place);
    return item && 'checked' in item && line ? { item, line } : undefined;
  }

  protected override willUpdate(): void {
    const id = this.#shown?.line.id;
    if (id === this.#line) return;
    this.#line = id;
    this.form = undefined;
    const { hand } = this.session;
    this.expanded = hand !== undefined && methodFieldOf(hand.place) !== undefined;
    this.refusal = undefined;
  }

  /** Takes the focus; a line of one formula is asked what its methods are to go by. */
  enter(): void {
    this.requestUpdate();
    void this.updateComplete.then(() => {
      if (this.#shown?.item.methods) this.renderRoot.querySelector<HTMLElement>('[data-do]')?.focus();
      else this.#ask('begin');
    });
  }

  override render() {
    const shown = this.#shown;
    if (!shown) return nothing;
    const { hand } = this.session;
    this.#edited = hand && methodFieldOf(hand.place) !== undefined ? hand.place : undefined;
    return html`${shown.item.methods ? this.#methods(shown) : this.#single(shown)}
      ${this.refusal === undefined ? nothing : html`<p class="problem" role="alert">${this.refusal}</p>`}
      <quay-command-menu></quay-command-menu>`;
  }

  /** A line of one formula, which may get methods. */
  #single({ line }: Shown) {
    if (this.form) return this.#form(line);
    return html`<div class="ends">
      <button class="fix" data-do="begin" @click=${() => this.#ask('begin')}>Compute by methods</button>
    </div>`;
  }

  #methods({ item, line }: Shown) {
    const { notebook, place } = this.session;
    const list = item.methods?.list ?? [];
    const row = place && /^r(\d+)$/.exec(place.item)?.[1];
    const used = methodInForce(notebook, item.id, row === undefined ? undefined : Number(row));
    const others = list.filter((one) => one !== used);
    const chooser = chooserAt(notebook, line);
    return html`<h3>${used ? 'Method' : 'Methods'}</h3>
      ${used ? this.#method({ item, line }, used, true) : nothing}
      ${this.#chosenBy(item, line, chooser)}
      ${
        others.length === 0
          ? nothing
          : html`<details class="methods" ?open=${this.expanded} @toggle=${this.#toggled}>
              <summary>${used ? 'Other methods' : 'All methods'} (${others.length})</summary>
              ${others.map((one) => this.#method({ item, line }, one, false))}
            </details>`
      }
      ${this.form ? this.#form(line) : this.#commands(line, chooser, used)}`;
  }

  #chosenBy({ methods }: Computed, { line }: MethodLine, chooser: Chooser | undefined) {
    const { notebook } = this.session;
    const by = methods?.byId === undefined ? undefined : notebook.model.items.get(methods.byId);
    const place = by && placeOfId(notebook, by.id);
    const now = chooser?.options.find(({ value }) => value === chooser.now);
    const value = now?.label || chooser?.now;
    return html`<p class="quiet">
      chosen by
      ${place ? html`<button class="name" @click=${() => this.session.jumpTo(place)}>${labelOf(by)}</button>` : html`“${line.by ?? ''}”`}${value === undefined ? nothing : html`, now “${value}”`}
    </p>`;
  }

  #commands(line: MethodLine, chooser: Chooser | undefined, used: MethodItem | undefined) {
    const full =
      chooser?.from !== undefined &&
      openOptions(line, chooser).length === 0 &&
      methodForOthers(line.line) !== undefined;
    return html`<div class="ends">
      ${full ? nothing : html`<button class="fix" data-do="add" @click=${() => this.#ask('add')}>Add a method</button>`}
      <button class="fix" data-do="by" @click=${() => this.#ask('by')}>Choose by something else</button>
      ${
        used
          ? html`<button class="fix" data-do="one" @click=${() => this.#keepOne(line, used.method.id)}>
              Back to one formula
            </button>`
          : nothing
      }
    </div>`;
  }

  /** One method: what it is for, formula, source, note; of the one in force the numbers too. */
  #method(shown: Shown, one: MethodItem, inForce: boolean): TemplateResult {
    const { item, line } = shown;
    const { method, words, checked, problems } = one;
    const { session, room } = this;
    const list = item.methods?.list ?? [];
    const isTyped = session.hand?.place.method === method.id;
    const told = inForce || isTyped ? [] : problems;
    return html`<section class="method" data-method=${method.id} aria-label=${`method ${words}`} @keydown=${(event: KeyboardEvent) => this.#key(event, line, method.id)}>
      <div class="title">
        <h3>${words}</h3>
        ${list.length > 1 ? html`<span class="quiet">${list.indexOf(one) + 1} of ${list.length}</span>` : nothing}
        <button
          class="menu"
          data-do=${`menu ${method.id}`}
          aria-haspopup="menu"
          aria-label=${`menu of the method ${words}`}
          @click=${(event: Event) => this.#openMenu(event, line, method.id, words)}
        >
          ${drawSign('menu')}
        </button>
      </div>
      ${inForce ? html`<h4>Formula</h4>` : nothing}
      ${drawSymbols(checked, room)}
      ${this.#field(line, one, words, 'formula', method.formula)}
      ${told.map(
        ({ message, severity }) =>
          html`<p class="problem ${severity === 'warning' ? 'warning' : ''}">${message}</p>`,
      )}
      ${inForce ? drawNumbers(session, { ...item, checked }, room) : nothing}
      ${this.#field(line, one, words, 'reference', method.reference)}
      ${this.#field(line, one, words, 'note', method.note)}
    </section>`;
  }

  /** What is written of a method, to be pressed and written otherwise. */
  #field(
    line: MethodLine,
    { method }: MethodItem,
    words: string,
    field: MethodText,
    text: string | undefined,
  ): TemplateResult {
    const { session } = this;
    const place = methodPlace(lineCell(line), method.id, field);
    const title =
      field === 'formula' ? nothing : html`<h4>${field === 'note' ? 'Note on the method' : 'Source'}</h4>`;
    const hand = session.hand && samePlace(session.hand.place, place) ? session.hand : undefined;
    if (hand)
      return html`${title}
        <div class="edited">
          ${cellEditor(session, { commit: this.#commit, cancel: this.#cancel }, hand)}
          ${hand.remarks?.map((remark) => html`<p class="problem" role="alert">${remark}</p>`) ?? nothing}
        </div>`;
    const isBlank = text === undefined || text.trim() === '';
    const what = `${fieldWords[field]} of the method ${words}`;
    if (isBlank && field !== 'formula')
      return html`<button class="fix" data-do=${keyOf(place)} aria-label=${`Add a ${what}`} @click=${() => this.#edit(place)}>
        Add a ${fieldWords[field]}
      </button>`;
    return html`${title}
      <button
        class="written ${field}${isBlank ? ' blank' : ''}"
        data-do=${keyOf(place)}
        title="change the ${fieldWords[field]}"
        aria-label=${`${what}: ${isBlank ? 'none yet' : text}; change it`}
        @click=${() => this.#edit(place)}
        .textContent=${isBlank ? 'no formula yet' : text}
      ></button>`;
  }

  #form(line: MethodLine) {
    const { form } = this;
    if (!form) return nothing;
    const host = {
      change: (changed: MethodForm) => {
        this.form = changed;
      },
      submit: (event: Event) => this.#submit(event, line),
      close: () => this.#closeForm(form),
    };
    const { fresh } = servingOf(form);
    const list = form.kind === 'by' ? undefined : fresh?.list;
    const follow = list === undefined ? [] : linesToFollow(this.session.notebook, list, line.id);
    return drawForm(form, line, this.#choosers(form, line), host, follow.map(localName));
  }

  #choosers({ kind }: MethodForm, line: MethodLine): readonly Chooser[] {
    const { notebook } = this.session;
    if (kind === 'begin' || kind === 'by') return choosersFor(notebook, line);
    const chooser = chooserAt(notebook, line);
    return chooser ? [chooser] : [];
  }

  /** Opens a form; `method` is what it is about. */
  #ask(kind: MethodForm['kind'], method?: string): void {
    const shown = this.#shown;
    if (!shown) return;
    const { line } = shown;
    const own = line.line.methods?.find(({ id }) => id === method);
    const blank = { kind, by: line.line.by ?? '', options: own?.for ?? [], fresh: { value: '' } };
    const others = own !== undefined && own.for === undefined;
    const started: MethodForm = { ...blank, others, ...(method !== undefined && { method }) };
    const choosers = this.#choosers(started, line);
    const [list] = choosers.find(({ by }) => by === started.by)?.lists ?? [];
    const form = { ...started, fresh: { value: '', ...(list && { list: list.id }) } };
    this.form = kind === 'begin' ? begunBy(form, choosers, choosers[0]?.by ?? '') : form;
    this.refusal = undefined;
    void this.updateComplete.then(() => {
      const field = this.renderRoot.querySelector<HTMLElement>('form :is(select, input, button)');
      field?.focus();
      this.renderRoot.querySelector('form')?.scrollIntoView({ block: 'nearest' });
    });
  }

  #closeForm({ kind, method }: MethodForm): void {
    this.form = undefined;
    this.#wanted = kind === 'serve' ? `menu ${method}` : kind;
  }

  #submit(event: Event, line: MethodLine): void {
    event.preventDefault();
    const { form, session } = this;
    if (!form) return;
    const { notebook } = session;
    const serving = servingOf(form);
    const deeds: Readonly<Record<MethodForm['kind'], () => Outcome<NewMethod | Edit | undefined>>> = {
      begin: () => beginMethods(notebook, line, form.by, serving),
      add: () => addMethod(notebook, line, serving),
      serve: () => serveOptions(notebook, line, form.method ?? '', serving),
      by: () => chooseBy(notebook, line, form.by),
    };
    const made = deeds[form.kind]();
    const edit = made.ok ? (made.value && 'edit' in made.value ? made.value.edit : made.value) : undefined;
    const done = made.ok && edit ? session.apply(edit) : made;
    if (!done.ok) {
      this.form = { ...form, refusal: this.#inWords(done) };
      return;
    }
    this.#closeForm(form.kind === 'begin' ? { ...form, kind: 'add' } : form);
    if (!made.ok || !made.value || !('edit' in made.value)) return;
    // A method is nothing without its formula.
    this.expanded = true;
    this.#edit(methodPlace(lineCell(line), made.value.id, 'formula'));
  }

  #inWords({ problems }: Extract<Outcome<unknown>, { ok: false }>): string {
    return refusalWords(problems, this.session.notebook, this.session.sheet).join('. ');
  }

  #edit(place: CellPlace): void {
    if (this.session.beginEdit(place)) this.requestUpdate();
  }

  #apply(edit: Outcome<Edit | undefined>, wanted: string): void {
    const done = edit.ok && edit.value ? this.session.apply(edit.value) : edit;
    this.refusal = done.ok ? undefined : this.#inWords(done);
    this.#wanted = wanted;
    this.requestUpdate();
  }

  #keepOne(line: MethodLine, id: string): void {
    this.#apply({ ok: true, value: keepOneMethod(line, id) }, 'begin');
  }

  #shift(line: MethodLine, id: string, step: 1 | -1): void {
    this.#apply(shiftMethod(line, id, step), `menu ${id}`);
  }

  #openMenu({ currentTarget }: Event, line: MethodLine, id: string, words: string): void {
    const { session } = this;
    const chooser = chooserAt(session.notebook, line);
    const cell = lineCell(line);
    const deeds: MethodDeeds = {
      edit: (field) => this.#edit(methodPlace(cell, id, field)),
      serve: () => this.#ask('serve', id),
      shift: (step) => this.#shift(line, id, step),
      keep: () => this.#keepOne(line, id),
      drop: () => this.#apply(dropMethod(line, id), 'add'),
      choose: (edit) => this.#apply({ ok: true, value: edit }, `menu ${id}`),
    };
    const items = methodMenu(session.notebook, line, id, chooser, deeds);
    void this.renderRoot
      .querySelector<CommandMenu>('quay-command-menu')
      ?.open(currentTarget as HTMLElement, items, `method ${words}`);
  }

  /** Moves a method by the keys that move a line on the page. */
  #key(event: KeyboardEvent, line: MethodLine, id: string): void {
    const step = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : undefined;
    if (!event.altKey || step === undefined || this.session.hand) return;
    event.preventDefault();
    event.stopPropagation();
    this.#shift(line, id, step);
  }

  readonly #toggled = ({ target }: Event): void => {
    this.expanded = (target as HTMLDetailsElement).open;
  };

  readonly #commit = ({ move }: Commit): void => {
    const place = this.#edited;
    if (!this.session.endEdit('enter') || !place) return;
    this.#wanted = keyOf(place);
    if (move === 'left' || move === 'right')
      void this.updateComplete.then(() => this.#focusBeside(keyOf(place), move));
  };

  readonly #cancel = (): void => {
    const place = this.#edited;
    this.session.endEdit('escape');
    if (place) this.#wanted = keyOf(place);
  };

  #focusBeside(key: string, side: 'left' | 'right'): void {
    const all = [...this.renderRoot.querySelectorAll<HTMLElement>('[data-do]')];
    const at = all.findIndex((one) => one.dataset.do === key);
    all[at + (side === 'left' ? -1 : 1)]?.focus();
  }

  protected override updated(): void {
    const { hand } = this.session;
    if (hand && this.#edited && hand.remarks)
      this.renderRoot.querySelector<HTMLElement>('quay-cell-editor, quay-prose-editor')?.focus();
    const wanted = this.#wanted;
    if (wanted === undefined || hand) return;
    this.#wanted = undefined;
    const button = this.renderRoot.querySelector<HTMLElement>(`[data-do="${CSS.escape(wanted)}"]`);
    (button ?? this.renderRoot.querySelector<HTMLElement>('[data-do]'))?.focus();
  }
}

/** What a button of a place is found by. */
function keyOf({ method, field }: CellPlace): string {
  return `${field} ${method}`;
}
