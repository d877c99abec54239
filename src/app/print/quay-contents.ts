import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import type { UnitsView } from '../../record/index.ts';
import {
  countStated,
  countWords,
  findingsOf,
  isByStated,
  notYetWords,
  sheetStates,
  stateWords,
} from '../../record/index.ts';
import { overviewStyles } from '../overview/overview-styles.ts';
import type { Session } from '../session/session.ts';
import { type Piece, titleOf } from './pieces.ts';

const unitsWords: Readonly<Record<UnitsView, string>> = {
  written: 'as written',
  SI: 'SI',
  US: 'US customary',
};

/** The first page of a printed book: its parts by the numbers at their feet, and the state of the book that was printed. */
export class Contents extends LitElement {
  static override properties = {
    session: { attribute: false },
    pieces: { attribute: false },
    hash: { attribute: false },
  };
  static override styles = [
    overviewStyles,
    css`
      td.state.bad {
        color: var(--bad);
      }
      .part {
        width: 2.5em;
        color: var(--ink-soft);
      }
      dl {
        display: grid;
        grid-template-columns: var(--margin) 1fr;
        margin: 0;
      }
      :is(dt, dd) {
        margin: 0;
        padding-block: 4px;
      }
      dt {
        padding-inline: 14px 12px;
        color: var(--ink-soft);
        font-size: var(--type-small);
      }
      dd {
        padding-inline: var(--lead) 40px;
      }
      .hash {
        overflow-wrap: anywhere;
      }
    `,
  ];

  declare session: Session;
  declare pieces: readonly Piece[];
  /** The content hash of the book as printed. */
  declare hash: string;

  override render(): TemplateResult {
    const { notebook, units } = this.session;
    const states = sheetStates(notebook);
    const { problems, remarks, checks } = findingsOf(notebook);
    const applying = checks.filter(({ inapplicable }) => !inapplicable);
    const holding = applying.filter(({ verdict }) => verdict?.holds).length;
    const failing = applying.filter(({ verdict }) => verdict?.holds === false).length;
    const byStated = applying.filter((check) => isByStated(notebook, check)).length;
    const beyond = checks.length - applying.length;
    const groups = new Map(notebook.book.sheets.map(({ key, group }) => [key, group ?? '']));
    let before = '';
    return html`<div class="page">
      <slot name="title-block"></slot>
      <h2>Contents</h2>
      <table>
        <thead class="unseen">
          <tr>
            <th scope="col">Group</th>
            <th scope="col">Part</th>
            <th scope="col">Sheet</th>
            <th scope="col">Checks</th>
            
          </tr>
        </thead>
        <tbody>
          ${this.pieces.map((piece, at) => {
            const group = piece.kind === 'sheet' ? (groups.get(piece.sheet) ?? '') : '';
            const shown = group === before ? '' : group;
            before = group;
            const state = piece.kind === 'sheet' ? states.get(piece.sheet) : undefined;
            const told = state && stateWords(state, this.session.computing);
            return html`<tr>
              <td class="sheet">${shown}</td>
              <td class="part">${at + 1}</td>
              <td>${titleOf(piece, notebook.book)}</td>
              <td class="state${told?.bad ? ' bad' : ''}">${told?.words ?? ''}</td>
            </tr>`;
          })}
        </tbody>
      </table>
      <h3>State of this print</h3>
      <dl>
        <dt>Checks</dt>
        <dd>
          ${applying.length === 0 ? 'none applies' : `${holding} of ${applying.length} hold${byStated === 0 ? '' : `, ${byStated} of these only by stated values`}, ${countWords(failing, 'check')} ${failing === 1 ? 'fails' : 'fail'}`}${
            applying.length > holding + failing
              ? `, ${applying.length - holding - failing} ${notYetWords(this.session.computing) ?? 'without a value'}`
              : nothing
          }${beyond === 0 ? nothing : `; ${beyond} more ${beyond === 1 ? 'does' : 'do'} not apply`}
        </dd>
        <dt>To look after</dt>
        <dd>${countWords(problems.length, 'problem')}, ${countWords(remarks.length, 'remark')}, ${countWords(countStated(notebook), 'stated value')}</dd>
        <dt>Units</dt>
        <dd>${unitsWords[units]}</dd>
        <dt>Content</dt>
        <dd class="hash">SHA-256 ${this.hash}</dd>
      </dl>
    </div>`;
  }
}

customElements.define('quay-contents', Contents);
