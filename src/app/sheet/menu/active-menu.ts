import type { Session } from '../../session/session.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { subjectAt } from './menu-subject.ts';
import type { MenuAction, QuaySheetMenu } from './quay-sheet-menu.ts';

/** What the menu needs of the page it belongs to. */
interface Host {
  readonly session: Session;
  readonly place: CellPlace | undefined;
  readonly renderRoot: ParentNode;
}

/** The menu of the line or part that is active on a page. */
export class ActiveMenu {
  readonly #host: Host;
  readonly #act: (action: MenuAction) => void;
  #found: QuaySheetMenu | null = null;

  constructor(host: Host, act: (action: MenuAction) => void) {
    this.#host = host;
    this.#act = act;
  }

  get isOpen(): boolean {
    return this.#element?.matches(':popover-open') === true;
  }

  /** Opens below an element of the active cell, or below the cell. */
  open(cell: HTMLElement | undefined, below: HTMLElement | undefined): void {
    const { place, session } = this.#host;
    const menu = this.#element;
    if (!place || !cell || !menu) return;
    void menu.open(subjectAt(session.notebook.book, place, below), below ?? cell, cell, this.#act);
  }

  /** It stands behind all lines of a long page: found once. */
  get #element(): QuaySheetMenu | null {
    if (!this.#found?.isConnected)
      this.#found = this.#host.renderRoot.querySelector<QuaySheetMenu>('quay-sheet-menu');
    return this.#found;
  }
}
