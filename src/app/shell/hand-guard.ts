import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { leadsOut } from '../editor/fields/shield-key.ts';
import type { Session } from '../session/session.ts';
import { isOnScrollBar } from '../sheet/scroll-bar.ts';
import type { EditInHand } from '../view-model/edit-in-hand.ts';
import { titleFieldOf } from '../view-model/place.ts';

type Host = ReactiveControllerHost & { readonly session: Session };

/** What a hand or a program does elsewhere on the page; whichever comes first has what is in hand entered. */
const elsewhere = ['pointerdown', 'mousedown', 'click', 'contextmenu', 'focusin', 'drop'] as const;

/**
 * Has what is being typed entered before anything else on the page is done, so that whatever follows finds it in the
 * book. Where it cannot be entered, the other thing is not done, and the person is told why in the field.
 */
export class HandGuard implements ReactiveController {
  readonly #host: Host;

  constructor(host: Host) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    for (const type of elsewhere) addEventListener(type, this.#turned, { capture: true });
    addEventListener('keydown', this.#key, { capture: true });
    addEventListener('beforeprint', this.#print, { capture: true });
  }

  hostDisconnected(): void {
    for (const type of elsewhere) removeEventListener(type, this.#turned, { capture: true });
    removeEventListener('keydown', this.#key, { capture: true });
    removeEventListener('beforeprint', this.#print, { capture: true });
  }

  readonly #turned = (event: Event): void => {
    const { session } = this.#host;
    if (!session.hand || isInField(event, session.hand)) return;
    // Who looks for a name while typing has not left.
    if (isOnScrollBar(event) || session.endEdit('elsewhere')) return;
    stop(event);
  };

  readonly #key = (event: KeyboardEvent): void => {
    const { session } = this.#host;
    if (session.hand && leadsOut(event) && !session.endEdit('file')) stop(event);
  };

  readonly #print = (): void => void this.#host.session.endEdit('file');
}

/** The focus cannot be kept where it was; the page gives it back. */
function stop(event: Event): void {
  event.preventDefault();
  event.stopImmediatePropagation();
}

/** Whether an event is one of the field that is being typed in, or of the sentence that stands by it. */
function isInField(event: Event, { place }: EditInHand): boolean {
  const path = event.composedPath();
  const title = titleFieldOf(place);
  return path.some((one) =>
    title === undefined
      ? one instanceof Element && one.matches('.edited, .refusal')
      : one instanceof HTMLInputElement && one.name === title,
  );
}
