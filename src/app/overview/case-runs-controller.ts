import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Session } from '../session/session.ts';
import { followCaseRuns } from './case-runs.ts';

/** Draws a page again as cases are done that it tells of, also where they were begun before it was opened. */
export class CaseRunsController implements ReactiveController {
  readonly #host: ReactiveControllerHost & { readonly session: Session };
  #end: (() => void) | undefined;

  constructor(host: ReactiveControllerHost & { readonly session: Session }) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    this.#end = followCaseRuns(this.#host.session, () => this.#host.requestUpdate());
  }

  hostDisconnected(): void {
    this.#end?.();
  }
}
