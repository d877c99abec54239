import type { Item } from '../../notebook/index.ts';
import type { Session } from '../session/session.ts';
import { dependsOn, feedsOf, itemAt, placeOfId } from '../view-model/places.ts';
import type { PageElements } from './page-elements.ts';

type Flow = 'source' | 'fed';

const words: Readonly<Record<Flow, string>> = {
  source: 'goes into the value in hand',
  fed: 'takes the value in hand',
};

/** Marks on the page the lines and columns that go into the value in hand, and those that take it. */
export class DependencyMarkers {
  #marked: readonly HTMLElement[] = [];
  #frame = 0;

  /** Marks right after the next frame, with the panel that tells the same. */
  showSoon(page: { readonly session: Session }, elements: PageElements): void {
    cancelAnimationFrame(this.#frame);
    this.#frame = requestAnimationFrame(() => {
      setTimeout(() => this.show(page.session, elements));
    });
  }

  /** Marks what belongs to the place where the person is now, and nothing else. */
  show({ notebook, place, sheet }: Session, elements: PageElements): void {
    for (const element of this.#marked) {
      delete element.dataset.flow;
      element.removeAttribute('aria-description');
    }
    const item = itemAt(notebook, place);
    const marked: HTMLElement[] = [];
    const mark = (found: Item, flow: Flow): void => {
      const at = found.sheet === sheet ? placeOfId(notebook, found.id) : undefined;
      if (!at) return;
      const element = 'column' in found ? elements.cellAt({ ...at, item: 'head' }) : elements.lineAt(at);
      if (!element) return;
      element.dataset.flow = flow;
      element.setAttribute('aria-description', words[flow]);
      marked.push(element);
    };
    if (item) {
      for (const found of dependsOn(notebook, item)) mark(found, 'source');
      for (const found of feedsOf(notebook, item.id)) mark(found, 'fed');
    }
    this.#marked = marked;
  }
}
