import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { type Revision, SIGNING_ROLES, type SigningRole, type SignOff } from '../../document/index.ts';
import { saidWords, sinceSignature } from '../../record/index.ts';
import {
  type CasesRun,
  checkingOf,
  issueRevision,
  openAtSigning,
  type SecondEngine,
  type SignatureStanding,
  signaturesOf,
  signOff,
  withdrawSignature,
} from '../../review/index.ts';
import { saidNow } from '../checking/said-now.ts';
import type { Session } from '../session/session.ts';
import { drawSign } from '../style/signs.ts';
import { overviewTitles } from '../view-model/page-view.ts';
import { AskedHeading } from './asked-heading.ts';
import type { BookChanges } from './book-changes.ts';
import { caseRunsOf, isRunStale } from './case-runs.ts';
import { CaseRunsController } from './case-runs-controller.ts';
import { signingStyles } from './signing-styles.ts';

/** So many digits of a content hash tell contents apart at a glance; the whole of it stands in the title. */
const SHORT = 12;

/** So many changes are told beside a signature; the rest is counted. */
const TOLD = 5;

/** A page of the book for who signs and issues it: names under its content, the revisions that are kept, what is open. */
export class SigningPage extends LitElement {
  static override properties = {
    session: { attribute: false },
    role: { state: true },
    reason: { state: true },
    told: { state: true },
    toldOfIssue: { state: true },
  };
  static override styles = signingStyles;
  declare session: Session;
  declare role: SigningRole;
  /** Why the book is signed though something is open, as far as it is typed. */
  declare reason: string;
  /** Why something is refused. */
  declare told: string;
  declare toldOfIssue: string;

  constructor() {
    super();
    this.role = 'checked';
    this.reason = '';
    this.told = '';
    this.toldOfIssue = '';
    new CaseRunsController(this);
    new AskedHeading(this, ({ kind }) => kind !== 'kept' && kind !== 'hand' && kind !== 'order', 'after');
  }

  override render(): TemplateResult {
    const { notebook } = this.session;
    const signatures = signaturesOf(notebook);
    const { revisions } = notebook.book.review;
    return html`<div class="page">
      <slot name="title-block"></slot>
      <h2 tabindex="-1">${overviewTitles.signing}</h2>
      <p class="words quiet">
        A signature here is a name and a date under one content of the book. It does not prove who typed it. It does tell when the
        content is no longer the one it was put under, and what has changed.
      </p>
      <h3>Signatures</h3>
      ${signatures.length === 0 ? html`<p class="words quiet">Nobody has signed yet.</p>` : this.#signatures(signatures)}
      ${this.#onScreen(() => html`<div class="words">${this.#signing()}</div>`)}
      <h3>Revisions</h3>
      ${revisions.length === 0 ? html`<p class="words quiet">No revision is issued yet.</p>` : this.#revisions(revisions)}
      ${this.#onScreen(
        () => html`<div class="words">${this.#issuing()}</div>
          <h3>Changes</h3>
          <div class="words"><quay-book-changes .session=${this.session}></quay-book-changes></div>`,
      )}
      ${this.#comments()}
    </div>`;
  }

  /** What is signed, issued and compared with has no use on paper. */
  #onScreen(draw: () => TemplateResult): TemplateResult | typeof nothing {
    return this.hasAttribute('paper') ? nothing : draw();
  }

  #signatures(all: readonly SignatureStanding[]): TemplateResult {
    return html`<table aria-label="Signatures">
      <thead>
        <tr>
          <th scope="col" class="lead">As</th>
          <th scope="col">Name</th>
          <th scope="col">Date</th>
          <th scope="col">Content</th>
          <th scope="col">Now</th>
        </tr>
      </thead>
      <tbody>
        ${all.map((one) => this.#signature(one))}
      </tbody>
    </table>`;
  }

  #signature(standing: SignatureStanding): TemplateResult {
    const { signature, holds } = standing;
    const { role, by, date, content, despite } = signature;
    const { notebook } = this.session;
    return html`<tr>
      <th scope="row" class="lead">${role}</th>
      <td class="by">${by}</td>
      <td class="date">${date ?? ''}</td>
      <td><code title=${content}>${content.slice(0, SHORT)}</code></td>
      <td class="state-sign">
        ${holds ? html`<span class="holds">${drawSign('holds')} as signed</span>` : html`<span class="gone">${drawSign('fails')} ${signature.withdrawn ? 'withdrawn' : 'changed since'}</span>`}
        ${
          holds
            ? nothing
            : html`<div class="changes">
                ${sinceSignature(notebook, standing, TOLD).map((words) => html`<div>${words}</div>`)}
              </div>`
        }
        ${despite ? html`<div class="changes">signed despite ${despite.open.join(', ')}: ${despite.reason}</div>` : nothing}
        ${signature.withdrawn ? nothing : this.#onScreen(() => html`<button @click=${() => this.#withdraw(signature)}><span class="quiet">withdraw</span></button>`)}
      </td>
    </tr>`;
  }

  #withdraw(signature: SignOff): void {
    if (this.#isNamed()) this.session.applyForGood(withdrawSignature(signature, saidNow(this.session)));
  }

  #signing(): TemplateResult {
    const { session } = this;
    const open = openNow(session, this.role);
    return html`<form @submit=${this.#sign}>
      <fieldset>
        <legend class="unseen">As</legend>
        ${SIGNING_ROLES.map(
          (role) => html`<label>
            <input
              type="radio"
              name="role"
              .checked=${this.role === role}
              @change=${() => {
                this.role = role;
              }}
            />${role}
          </label>`,
        )}
        ${this.#name()}
        <button class="act" type="submit">Sign</button>
      </fieldset>
      ${
        open.length === 0
          ? nothing
          : html`<div>Open:</div>
              <ul class="open">
                ${open.map((words) => html`<li>${words}</li>`)}
              </ul>
              <textarea
                aria-label="why it is signed all the same"
                placeholder="why it is signed all the same"
                maxlength="4000"
                .value=${this.reason}
                @input=${({ target }: Event) => {
                  this.reason = (target as HTMLTextAreaElement).value;
                }}
              ></textarea>`
      }
      ${this.told === '' ? nothing : html`<p class="told" role="alert">${this.told}</p>`}
    </form>`;
  }

  #name(): TemplateResult {
    return html`<label>
      name
      <input
        type="text"
        name="by"
        maxlength="80"
        .value=${this.session.checker}
        @change=${({ target }: Event) => this.session.setChecker((target as HTMLInputElement).value)}
      />
    </label>`;
  }

  readonly #sign = (event: Event): void => {
    event.preventDefault();
    const { session, role, reason } = this;
    if (!this.#isNamed()) return;
    const open = openNow(session, role);
    const edit = signOff(session.notebook, { role, ...saidNow(this.session) }, open, reason);
    const done = edit.ok ? session.applyForGood(edit.value) : edit;
    this.told = done.ok
      ? ''
      : done.problems.map(({ message, hints }) => [message, ...hints].join('; ')).join('; ');
    if (done.ok) this.reason = '';
  };

  #isNamed(): boolean {
    this.told = this.session.checker === '' ? 'Enter a name first.' : '';
    return this.told === '';
  }

  #revisions(all: readonly Revision[]): TemplateResult {
    return html`<table aria-label="Revisions">
      <thead>
        <tr>
          <th scope="col" class="lead">Revision</th>
          <th scope="col">Date</th>
          <th scope="col">By</th>
          <th scope="col">Note</th>
          <th scope="col">Content</th>
          ${this.#onScreen(() => html`<th scope="col">Since</th>`)}
        </tr>
      </thead>
      <tbody>
        ${all.toReversed().map((one) => this.#revision(one))}
      </tbody>
    </table>`;
  }

  #revision(one: Revision): TemplateResult {
    return html`<tr>
      <th scope="row" class="lead">${one.label}</th>
      <td class="date">${one.date ?? ''}</td>
      <td class="by">${one.by}</td>
      <td>${one.note ?? ''}</td>
      <td><code title=${one.content}>${one.content.slice(0, SHORT)}</code></td>
      ${this.#onScreen(
        () => html`<td>
          <button @click=${() => this.#showSince(one)}><span class="quiet">what has changed since</span></button>
        </td>`,
      )}
    </tr>`;
  }

  #showSince({ id }: Revision): void {
    this.renderRoot.querySelector<BookChanges>('quay-book-changes')?.showSince(id);
  }

  #issuing(): TemplateResult {
    return html`<form @submit=${this.#issue}>
      <div class="fields">
        <label>revision <input type="text" name="label" size="5" maxlength="40" placeholder="A" /></label>
        <label>note <input type="text" name="note" size="30" maxlength="400" /></label>
        ${this.#name()}
        <button class="act" type="submit">Issue</button>
      </div>
      ${this.toldOfIssue === '' ? nothing : html`<p class="told" role="alert">${this.toldOfIssue}</p>`}
    </form>`;
  }

  readonly #issue = (event: Event): void => {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    const field = (name: string): string =>
      form.querySelector<HTMLInputElement>(`[name="${name}"]`)?.value.trim() ?? '';
    const [label, note] = [field('label'), field('note')];
    this.toldOfIssue = this.session.checker === '' ? 'Enter a name first.' : '';
    if (this.toldOfIssue !== '') return;
    const isTaken = this.session.notebook.book.review.revisions.some((one) => one.label === label);
    if (label === '' || isTaken) {
      this.toldOfIssue =
        label === '' ? 'Enter the revision, as A or 1.' : `Revision ${label} is issued already.`;
      return;
    }
    const done = this.session.applyForGood(
      issueRevision(this.session.notebook, { label, note, ...saidNow(this.session) }),
    );
    this.toldOfIssue = done.ok ? '' : (done.problems[0]?.message ?? '');
    if (!done.ok) return;
    for (const name of ['label', 'note']) {
      const field = form.querySelector<HTMLInputElement>(`[name="${name}"]`);
      if (field) field.value = '';
    }
  };

  #comments(): TemplateResult | typeof nothing {
    const { all, open } = checkingOf(this.session.notebook);
    const comments = [
      ...all.flatMap((one) => one.open.map((comment) => ({ on: one.item.id, comment }))),
      ...open.map((comment) => ({ on: comment.called ?? 'the book', comment })),
    ];
    if (comments.length === 0) return nothing;
    return html`<h3>Open comments</h3>
      <ul class="words">
        ${comments.map(({ on, comment }) => html`<li>${on}: ${comment.text} <span class="quiet">${saidWords(comment)}</span></li>`)}
      </ul>`;
  }
}

/** What stands against a signature as far as is known now. */
function openNow(session: Session, role: SigningRole): readonly string[] {
  return openAtSigning(session.notebook, rechecked(session), role, casesRun(session));
}

/** What the cases of the templates came to, as far as they have been run. */
function casesRun(session: Session): CasesRun {
  const runs = [...caseRunsOf(session).values()].map((run) => ({
    failing: run.results.filter(({ report }) => !report.agrees).length,
    isStale: isRunStale(run, session.notebook.book),
  }));
  const failing = (stale: boolean): number =>
    runs.reduce((sum, run) => sum + (run.isStale === stale ? run.failing : 0), 0);
  return { failing: failing(false), failedBefore: failing(true) };
}

/** What the second engine came to; undefined while it has not computed the book as it is. */
function rechecked({ recheck }: Session): SecondEngine | undefined {
  return recheck.kind === 'done' ? { differing: recheck.report.findings.length } : undefined;
}
