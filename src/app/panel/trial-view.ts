import { html, nothing, type TemplateResult } from 'lit';
import type { InputItem } from '../../notebook/index.ts';
import { countedDo, findingsOf, labelOf, localName, math, symbolMath } from '../../record/index.ts';
import { unitInPrint } from '../../units/index.ts';
import { displayedUnit, entryForScreen } from '../editing/cells/carry-unit.ts';
import { choiceOptions } from '../editing/choices/choice-options.ts';
import type { Session } from '../session/session.ts';
import { drawMarkup } from '../style/markup.ts';
import { placeOfId } from '../view-model/places.ts';
import { nudgedEntry } from './nudge.ts';
import { entryWords, type TrialController } from './trial-controller.ts';
import { type MovedCheck, movedChecks, type ValueTrial } from './value-trial.ts';

/** The place to try another value for a line, and what would follow from it. */
export function drawTrial(session: Session, item: InputItem, trials: TrialController): TemplateResult {
  const { trial, refusal, typed } = trials;
  return html`<h3 id="trial">Try another value</h3>
    <div class="trial" role="group" aria-labelledby="trial" @keydown=${(event: KeyboardEvent) => onKeydown(event, item, trials)}>
      ${item.row.kind === 'choice' ? drawOptions(session, item, trials) : drawField(session, item, trials)}
      ${refusal === undefined ? nothing : html`<p class="problem" role="alert">${refusal}</p>`}
      ${
        typed !== undefined
          ? html`<p class="quiet" role="status">Enter tries ${typed.trim() === '' ? 'a blank' : typed.trim()}; the book stays as it is.</p>`
          : trial
            ? drawOutcome(session, item, trial, trials)
            : html`<p class="quiet">The book stays as it is.</p>`
      }
    </div>`;
}

function drawField(session: Session, item: InputItem, trials: TrialController): TemplateResult {
  const { notebook, units } = session;
  const place = placeOfId(notebook, item.id);
  const entry = trials.entryOf(item);
  const text = place ? entryForScreen(notebook, place, units, entry) : entry;
  const unit = place && displayedUnit(notebook, place, units);
  const steps = nudgedEntry(entry, 1) !== undefined;
  return html`<div class="nudge">
    ${steps ? html`<button @click=${() => trials.step(item, -1)} aria-label="Smaller">−</button>` : nothing}
    <input
      class="tried"
      aria-label="Value to try"
      autocomplete="off"
      spellcheck="false"
      .value=${trials.typed ?? text}
      @input=${(event: Event) => trials.note((event.target as HTMLInputElement).value)}
      @change=${(event: Event) => trials.type(item, (event.target as HTMLInputElement).value)}
    />
    ${unit === undefined || unit === '' || unit === '-' ? nothing : html`<span class="quiet">${unitInPrint(unit)}</span>`}
    ${steps ? html`<button @click=${() => trials.step(item, 1)} aria-label="Larger">+</button>` : nothing}
  </div>`;
}

function drawOptions(session: Session, item: InputItem, trials: TrialController): TemplateResult {
  const place = placeOfId(session.notebook, item.id);
  const now = trials.entryOf(item);
  return html`<select
    class="tried"
    aria-label="Value to try"
    @change=${(event: Event) => trials.type(item, (event.target as HTMLSelectElement).value)}
  >
    ${(place ? choiceOptions(session.notebook, place) : []).map(
      ({ value, label }) =>
        html`<option value=${value} .selected=${value === now}>${label ?? value}</option>`,
    )}
  </select>`;
}

function drawOutcome(
  session: Session,
  item: InputItem,
  trial: ValueTrial,
  trials: TrialController,
): TemplateResult {
  const { notebook } = session;
  const moved = movedChecks(notebook, trial.notebook);
  const warnings = trial.notebook.problems().filter(({ cell }) => cell === item.id);
  return html`<dl>
      <dt>in the book</dt>
      <dd>${entryWords(session, item, item.row.entry)}</dd>
      <dt>tried</dt>
      <dd class="numbers">${entryWords(session, item, trial.entry)}</dd>
    </dl>
    ${warnings.map(({ message }) => html`<p class="problem warning" role="note">${message}</p>`)}
    <div class="ends">
      <button class="fix" @click=${() => trials.keep()}>Keep the value tried</button>
      <button class="fix" @click=${() => trials.drop()}>Drop it</button>
    </div>
    <p role="status">${movedWords(moved, findingsOf(notebook).checks.length)}</p>
    ${
      moved.length === 0
        ? nothing
        : html`<ul class="moved" aria-label="Checks that move">
            ${moved.map((one) => drawMoved(session, one))}
          </ul>`
    }`;
}

function drawMoved(
  session: Session,
  { check: { item }, before, after, holds, isBeyond }: MovedCheck,
): TemplateResult {
  const sheet = session.notebook.book.sheets.find(({ key }) => key === item.sheet);
  return html`<li>
    <span>
      ${drawMarkup(math(symbolMath(localName(item))))} ${labelOf(item) === item.row.name ? '' : labelOf(item)}
      ${item.sheet === session.sheet ? nothing : html`<span class="sheet">${sheet?.title ?? item.sheet}</span>`}
    </span>
    <span class="move">${before}; tried: <span class=${holds !== true ? 'excess' : isBeyond ? 'beyond' : 'holds'}>${after}</span></span>
  </li>`;
}

/** How many checks move, and how many of them turn, in words. */
export function movedWords(moved: readonly MovedCheck[], all: number): string {
  if (all === 0) return 'The book has no check.';
  if (moved.length === 0) return `None of ${countedDo(all, 'check', 'move')}.`;
  const turned = (holds: boolean | undefined, isBeyond = false): number =>
    moved.filter((one) => one.turns && one.holds === holds && (!holds || one.isBeyond === isBeyond)).length;
  const parts = [
    [turned(false), 'comes to fail', 'come to fail'],
    [turned(undefined), 'loses its value', 'lose their value'],
    [turned(true), 'comes to hold', 'come to hold'],
    [turned(true, true), 'comes to hold beyond a permitted range', 'come to hold beyond a permitted range'],
  ] as const;
  const said = parts
    .filter(([count]) => count > 0)
    .map(([count, one, many]) => `, ${count} ${count === 1 ? one : many}`);
  return `${moved.length} of ${countedDo(all, 'check', 'move')}${said.join('')}.`;
}

function onKeydown(event: KeyboardEvent, item: InputItem, trials: TrialController): void {
  const steps = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
  if (event.key === 'Escape' && trials.trial) trials.drop();
  else if (steps !== 0 && !(event.target instanceof HTMLSelectElement)) {
    // What was typed and not tried yet is where the step begins.
    if (event.target instanceof HTMLInputElement) trials.type(item, event.target.value);
    trials.step(item, event.shiftKey ? 10 * steps : steps);
  } else return;
  event.preventDefault();
}
