import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Book } from '../../document/index.ts';
import { tooLargeToRecheck } from '../../notebook/index.ts';
import type { RecheckProgress } from '../../recheck/index.ts';
import type { RecheckReply, RecheckRequest } from '../../workers/index.ts';
import type { RecheckState } from '../session/recheck-state.ts';
import type { Session } from '../session/session.ts';

/** The pause after an edit and after the last key before the second engine starts, in milliseconds. */
const pause = 1500;

type Outcome = Extract<RecheckState, { readonly kind: 'left out' | 'done' | 'failed' | 'cancelled' }>;

/** Has the second engine compute the book in a worker whenever the person pauses. */
export class RecheckController implements ReactiveController {
  /** What it came to with the book as it is; nothing before it has. */
  #outcome: Outcome | undefined;
  readonly #host: ReactiveControllerHost & { readonly session: Session };
  #worker: Worker | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** Whether the worker has been asked and has not answered yet. */
  #asked = false;
  #progress: RecheckProgress | undefined;
  #turn = 0;
  /** The book that is computed a second time, or was. */
  #content: Book | undefined;
  #lastKey = Number.NEGATIVE_INFINITY;
  #leave: (() => void) | undefined;

  constructor(host: ReactiveControllerHost & { readonly session: Session }) {
    this.#host = host;
    host.addController(this);
  }

  get #state(): RecheckState {
    if (this.#outcome) return this.#outcome;
    if (this.#asked) return { kind: 'checking', ...(this.#progress && { progress: this.#progress }) };
    const { computing } = this.#host.session;
    if (!computing) return { kind: 'waiting for a pause' };
    return { kind: computing.isStopped ? 'stopped' : 'waiting for values' };
  }

  hostConnected(): void {
    this.#leave = this.#host.session.subscribe((event) => {
      // What the checker says is computed by neither engine.
      if (event.kind === 'book' && !this.#isSameContent()) this.#later();
      if (event.kind === 'computing') this.#tell();
      if (event.kind === 'recheck' && event.asks === 'cancel') this.#cancel();
      if (event.kind === 'recheck' && event.asks === 'begin') this.#later();
    });
    addEventListener('keydown', this.#keyed, { capture: true });
    this.#later();
  }

  hostDisconnected(): void {
    this.#leave?.();
    removeEventListener('keydown', this.#keyed, { capture: true });
    clearTimeout(this.#timer);
    this.#giveUp();
  }

  /** Ends a recheck under way: the book it is of has moved on. */
  #giveUp(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#asked = false;
    this.#progress = undefined;
  }

  /** Ends the recheck under way, or the wait for one, until the book is another or the person asks for it. */
  #cancel(): void {
    clearTimeout(this.#timer);
    this.#giveUp();
    this.#conclude({ kind: 'cancelled' });
  }

  #tell(): void {
    this.#host.session.setRecheck(this.#state);
  }

  #isSameContent(): boolean {
    const { sheets, settings } = this.#host.session.notebook.book;
    return this.#content?.sheets === sheets && this.#content.settings === settings;
  }

  #later(): void {
    const { session } = this.#host;
    this.#content = session.notebook.book;
    this.#turn += 1;
    if (this.#asked) this.#giveUp();
    this.#outcome = undefined;
    this.#tell();
    this.#wait(pause);
  }

  readonly #keyed = (): void => {
    this.#lastKey = performance.now();
  };

  /** Asks after so many milliseconds, but not while the person types: a second core is not always there. */
  #wait(milliseconds: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      const rest = this.#lastKey + pause - performance.now();
      if (rest > 0) this.#wait(rest);
      // What is not computed yet cannot be compared.
      else if (this.#host.session.computing) this.#wait(pause);
      else this.#ask();
    }, milliseconds);
  }

  #ask(): void {
    const reason = tooLargeToRecheck(this.#host.session.notebook);
    if (reason !== undefined) {
      this.#conclude({ kind: 'left out', reason });
      return;
    }
    this.#asked = true;
    this.#tell();
    this.#worker ??= this.#start();
    const request: RecheckRequest = { turn: this.#turn, book: this.#host.session.notebook.book };
    this.#worker.postMessage(request);
  }

  #start(): Worker {
    const worker = new Worker(new URL('../../workers/recheck.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', (event: MessageEvent<RecheckReply>) => this.#hear(event.data));
    worker.addEventListener('error', (event) => {
      if (worker !== this.#worker) return;
      this.#giveUp();
      this.#conclude({ kind: 'failed', reason: event.message });
    });
    return worker;
  }

  #hear(reply: RecheckReply): void {
    if (reply.turn !== this.#turn) return;
    if ('progress' in reply) {
      this.#progress = reply.progress;
      this.#tell();
      return;
    }
    this.#asked = false;
    this.#progress = undefined;
    this.#conclude(
      'report' in reply ? { kind: 'done', report: reply.report } : { kind: 'failed', reason: reply.failed },
    );
  }

  #conclude(outcome: Outcome): void {
    this.#outcome = outcome;
    this.#tell();
  }
}
