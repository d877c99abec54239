import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { foldedOption, type Method, type Option } from '../../../document/index.ts';
import { indexFor } from '../../../notebook/index.ts';
import type { FreshOption, Serving } from '../../editing/methods/change-methods.ts';
import type { Chooser } from '../../editing/methods/choosers.ts';
import { type MethodLine, methodForOthers } from '../../editing/methods/method-line.ts';

/**
 * What is being decided of the methods of a line: that it has them, that there is one more, what one is for, what
 * chooses between them.
 */
export interface MethodForm {
  readonly kind: 'begin' | 'add' | 'serve' | 'by';
  /** The name of what chooses. */
  readonly by: string;
  /** The method that the form is about. */
  readonly method?: string;
  readonly options: readonly string[];
  readonly others: boolean;
  /** The new option, as far as it is typed. */
  readonly fresh: FreshOption;
  /** Why it cannot be done. */
  readonly refusal?: string;
}

/** What a form asks of the panel. */
export interface FormHost {
  readonly change: (form: MethodForm) => void;
  readonly submit: (event: Event) => void;
  readonly close: () => void;
}

/** What a form stands for. */
export function servingOf({ options, others, fresh }: MethodForm): Serving {
  const isNew = `${fresh.value}${fresh.label ?? ''}`.trim() !== '';
  return { options, others, ...(isNew && !others && { fresh }) };
}

const titles: Readonly<Record<MethodForm['kind'], string>> = {
  begin: 'Compute by methods',
  add: 'Add a method',
  serve: 'What the method is for',
  by: 'What chooses the method',
};

const buttons: Readonly<Record<MethodForm['kind'], string>> = {
  begin: 'Use methods',
  add: 'Add it and write its formula',
  serve: 'Keep',
  by: 'Keep',
};

/** A form, with what would follow from it said before it is kept; `follow` names the other lines that a new option concerns. */
export function drawForm(
  form: MethodForm,
  line: MethodLine,
  choosers: readonly Chooser[],
  host: FormHost,
  follow: readonly string[],
): TemplateResult {
  const { kind, refusal } = form;
  const chooser = choosers.find(({ by }) => by === form.by);
  return html`<form class="fields" aria-labelledby="form-title" @submit=${host.submit} @keydown=${(event: KeyboardEvent) => onKeydown(event, host)}>
    <h3 id="form-title">${titles[kind]}</h3>
    ${kind === 'begin' || kind === 'by' ? drawChoosers(form, choosers, host) : nothing}
    ${kind === 'by' ? nothing : chooser ? drawServing(form, line, chooser, host) : nothing}
    ${followsFrom(form, line, chooser).map((words) => html`<p class="quiet">${words}</p>`)}
    ${follow.length === 0 ? nothing : html`<p class="quiet">These lines will need a method for it too: ${follow.join(', ')}.</p>`}
    ${refusal === undefined ? nothing : html`<p class="trouble" role="alert">${refusal}</p>`}
    <div class="buttons">
      <button type="button" @click=${host.close}>Cancel</button>
      <button class="main" ?disabled=${choosers.length === 0}>${buttons[kind]}</button>
    </div>
  </form>`;
}

function drawChoosers(form: MethodForm, choosers: readonly Chooser[], host: FormHost): TemplateResult {
  if (choosers.length === 0)
    return html`<p class="quiet">
      Methods go by a choice: put one on a sheet first (Shift+F10 on a line, “a choice”), with an option for each method.
    </p>`;
  const labelled = ({ by, label }: Chooser): string => (label === by ? by : `${label} (${by})`);
  return html`<label class="field"
    >Chosen by<select
      name="by"
      @change=${({ target }: Event) => {
        const by = (target as HTMLSelectElement).value;
        host.change(begunBy(form, choosers, by));
      }}
    >
      ${choosers.map(
        (one) =>
          html`<option value=${one.by} .selected=${live(one.by === form.by)}>${labelled(one)}</option>`,
      )}
    </select>
  </label>`;
}

/** A form by something else: the formula there is at first for what that chooses now. */
export function begunBy(form: MethodForm, choosers: readonly Chooser[], by: string): MethodForm {
  const chooser = choosers.find((one) => one.by === by);
  const { refusal: _, ...rest } = form;
  if (form.kind !== 'begin' || !chooser) return { ...rest, by };
  const now = chooser.options.find(
    ({ value }) => chooser.now !== undefined && foldedOption(value) === foldedOption(chooser.now),
  );
  const option = now ?? chooser.options[0];
  return { ...rest, by, options: option ? [option.value] : [], others: option === undefined };
}

function drawServing(form: MethodForm, line: MethodLine, chooser: Chooser, host: FormHost): TemplateResult {
  const { methods = [] } = line.line;
  const own = methods.find(({ id }) => id === form.method);
  const rest = methods.filter((one) => one !== own);
  const taken = new Set(rest.flatMap((one) => one.for ?? []).map(foldedOption));
  // An option that the choice has no more is still one that the method is for, until it is taken from it.
  const gone = (own?.for ?? [])
    .filter((option) => !isOptionOf(chooser, option))
    .map((value): Option => ({ value }));
  const offered = [...chooser.options, ...gone].filter(({ value }) => !taken.has(foldedOption(value)));
  const othersTaken = methodForOthers({ ...line.line, methods: rest }) !== undefined;
  const what = form.kind === 'begin' ? 'The present formula is for' : 'For';
  const set = (changes: Partial<MethodForm>): void => {
    const { refusal: _, ...kept } = form;
    host.change({ ...kept, ...changes });
  };
  const isTicked = (value: string): boolean =>
    !form.others && form.options.some((one) => foldedOption(one) === foldedOption(value));
  return html`<fieldset class="choices">
      <legend>${what}</legend>
      ${offered.map(
        (option) => html`<label>
          <input
            type="checkbox"
            name="option"
            value=${option.value}
            .checked=${live(isTicked(option.value))}
            @change=${({ target }: Event) => {
              const others = form.others ? [] : form.options.filter((one) => one !== option.value);
              const options = (target as HTMLInputElement).checked ? [...others, option.value] : others;
              set({ options, others: false });
            }}
          />${wordsOf(option)}
        </label>`,
      )}
      ${
        othersTaken
          ? nothing
          : html`<label>
              <input
                type="checkbox"
                name="others"
                .checked=${live(form.others)}
                @change=${({ target }: Event) => set({ others: (target as HTMLInputElement).checked })}
              />${methods.length === 0 ? 'all options' : 'all others'}
            </label>`
      }
    </fieldset>
    ${form.kind === 'begin' || form.others ? nothing : drawFresh(form, chooser, set)}`;
}

/** The fields for an option that what chooses does not have yet. */
function drawFresh(
  { fresh }: MethodForm,
  { by, from, lists, isOpen }: Chooser,
  set: (changes: Partial<MethodForm>) => void,
): TemplateResult {
  if (from !== undefined)
    return html`<p class="quiet">${by} has its options from ${from}; a row there makes another.</p>`;
  const words =
    lists.length === 0
      ? 'Or another text'
      : lists.length === 1 && !isOpen
        ? `Or a new option of ${by}`
        : 'Or a new option';
  const list = lists.find(({ id }) => id === fresh.list);
  return html`<label class="field"
      >${words}<input
        name="fresh"
        .value=${live(fresh.value)}
        @input=${({ target }: Event) => set({ fresh: { ...fresh, value: (target as HTMLInputElement).value } })}
      />
    </label>
    ${
      lists.length > 1 || (isOpen && lists.length > 0)
        ? html`<label class="field"
            >that is put into<select
              name="list"
              @change=${({ target }: Event) => {
                const { list: _, ...rest } = fresh;
                const id = (target as HTMLSelectElement).value;
                set({ fresh: id === '' ? rest : { ...rest, list: id } });
              }}
            >
              ${lists.map(
                ({ id, label }) =>
                  html`<option value=${id} .selected=${live(id === fresh.list)}>${label}</option>`,
              )}
              ${isOpen ? html`<option value="" .selected=${live(fresh.list === undefined)}>no list</option>` : nothing}
            </select>
          </label>`
        : nothing
    }
    ${
      list?.isChoice
        ? html`<label class="field"
            >In words<input
              name="words"
              .value=${live(fresh.label ?? '')}
              @input=${({ target }: Event) => set({ fresh: { ...fresh, label: (target as HTMLInputElement).value } })}
            />
          </label>`
        : nothing
    }`;
}

/** What would follow from a form, in sentences. */
function followsFrom(
  form: MethodForm,
  { line }: MethodLine,
  chooser: Chooser | undefined,
): readonly string[] {
  if (!chooser) return [];
  const { by, now } = chooser;
  if (form.kind === 'by') {
    const unknown = (line.methods ?? [])
      .flatMap((method) => method.for ?? [])
      .filter((option) => !isOptionOf(chooser, option));
    return by !== line.by && unknown.length > 0
      ? [`${by} does not have ${inQuotes(unknown)}, which methods are for.`]
      : [];
  }
  const methods = methodsAfter(form, line.methods ?? []);
  const sentences: string[] = [];
  const open = chooser.options.filter(({ value }) => indexFor(methods, value) < 0);
  if (open.length > 0) sentences.push(`No method is then for ${inQuotes(open.map(wordsOf))}.`);
  if (now !== undefined && chooser.kind !== 'column' && indexFor(methods, now) < 0)
    sentences.push(
      `${by} is “${now}”: the line has no value until a method is for that, or another is chosen.`,
    );
  return sentences;
}

/** What the methods would be for once a form is kept. */
function methodsAfter(
  { method, options, others }: MethodForm,
  methods: readonly Method[],
): readonly Method[] {
  const rest = methods.filter(({ id }) => id !== method);
  return [...rest, { id: '', formula: '', ...(!others && { for: options }) }];
}

function isOptionOf({ options }: Chooser, option: string): boolean {
  return options.some(({ value }) => foldedOption(value) === foldedOption(option));
}

/** An option as a person knows it. */
function wordsOf({ value, label }: Option): string {
  return label === undefined || label === '' || label === value ? value : label;
}

/** Five options at most are all told: “and 1 more” takes the room of the fifth. */
function inQuotes(all: readonly string[]): string {
  const shown = all.slice(0, all.length <= 5 ? 5 : 4).map((one) => `“${one}”`);
  const more = all.length - shown.length;
  return more > 0 ? `${shown.join(', ')} and ${more} more` : shown.join(', ');
}

function onKeydown(event: KeyboardEvent, host: FormHost): void {
  // What is typed here is not for the page; keys of the app go on to it.
  if (event.key !== 'Escape') return;
  event.preventDefault();
  event.stopPropagation();
  host.close();
}
