import { css, html, LitElement } from 'lit';

/** What the page shows until books can be opened in it: what Quaybook is, and how to compute today. */
export class StartPage extends LitElement {
  static override styles = css`
    main {
      max-width: 40rem;
      margin: 4rem auto;
      padding: 2.5rem 3rem;
      background: var(--paper);
      border-top: 2px solid var(--ink);
    }
    h1 {
      margin: 0 0 1rem;
      font-size: 1.5rem;
    }
    h2 {
      margin: 2rem 0 0.5rem;
      font-size: 1rem;
    }
    p {
      margin: 0.5rem 0;
    }
    pre {
      margin: 0.5rem 0;
      padding-left: 1rem;
      border-left: 1px solid var(--rule);
      color: var(--accent);
      white-space: pre-wrap;
    }
    .caution {
      color: var(--ink-faint);
    }
  `;

  override render() {
    return html`
      <main>
        <h1>Quaybook</h1>
        <p>
          A calculation notebook for people who rebuild wharves: the units are checked before anything is
          computed, and a second engine can check every number.
        </p>
        <h2>Where it computes today</h2>
        <p>Books cannot be opened on this page yet. The command line computes them:</p>
        <pre>npm run --silent quaybook -- calc BOOK</pre>
        <p class="caution">
          A result here is an aid to a licensed engineer's judgement, not a design. Local codes come first.
        </p>
      </main>
    `;
  }
}
