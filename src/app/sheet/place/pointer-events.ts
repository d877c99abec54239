import type { CellPlace } from '../../session/place.ts';
import { samePlace } from '../../session/place.ts';
import { type CommandHost, carryOut } from './commands.ts';
import { tableRow } from './grid-map.ts';
import { isWholeRows } from './range.ts';

type Host = Omit<CommandHost, 'openMenu'> &
  HTMLElement & { readonly openMenu: (below?: HTMLElement) => void; readonly editing: boolean };

/** What the pointer does on a page: choose, extend, edit, open menus. */
export class PointerEvents {
  readonly #host: Host;
  #dragging = false;
  /** The row of a table at whose number the press under way began. */
  #rowFrom: CellPlace | undefined;
  /** Whether the press under way began on the cell that was chosen already. */
  #again = false;

  constructor(host: Host) {
    this.#host = host;
    host.addEventListener('pointerdown', this.#down);
    host.addEventListener('pointermove', this.#move);
    host.addEventListener('dblclick', this.#twice);
    host.addEventListener('click', this.#click);
    host.addEventListener('contextmenu', this.#menu);
  }

  readonly #down = (event: PointerEvent): void => {
    this.#again = false;
    if (event.button !== 0 || inEditor(event)) return;
    const place = this.#placeOf(event);
    if (!place) return;
    this.#dragging = !targetOf(event)?.closest('button');
    this.#rowFrom = undefined;
    if (targetOf(event)?.closest('[data-row-number]')) {
      event.preventDefault();
      const began = event.shiftKey ? (this.#host.anchor ?? this.#host.place) : undefined;
      const inTable = began?.part === place.part && tableRow(began.item) !== undefined;
      this.#rowFrom = inTable ? began : place;
      this.#selectRows(place);
      return;
    }
    if (event.shiftKey) event.preventDefault();
    this.#again = samePlace(place, this.#host.place);
    this.#host.goTo(place, event.shiftKey);
    if (this.#again && targetOf(event)?.closest('[data-open]')) {
      event.preventDefault();
      this.#host.startEdit();
    }
  };

  readonly #move = (event: PointerEvent): void => {
    if (!this.#dragging || this.#host.editing) return;
    if (event.buttons !== 1) {
      this.#dragging = false;
      return;
    }
    const place = this.#placeOf(event);
    if (!place || samePlace(place, this.#host.place)) return;
    getSelection()?.empty();
    if (!this.#rowFrom) this.#host.goTo(place, true);
    else if (this.#rowFrom.part === place.part) this.#selectRows(place);
  };

  /** Selects the rows of a table from where the press began to a place, each as a whole. */
  #selectRows(to: CellPlace): void {
    const { map } = this.#host;
    const from = this.#rowFrom ?? to;
    const [row, other] = [map.rowAt(map.indexOf(to)), map.rowAt(map.indexOf(from))];
    const [first, last] = [row?.fields[0], other?.fields.at(-1)];
    if (tableRow(to.item) === undefined || first === undefined || last === undefined) return;
    this.#host.select({ ...to, field: first }, { ...from, field: last });
  }

  readonly #twice = (event: MouseEvent): void => {
    if (inEditor(event) || !this.#placeOf(event) || targetOf(event)?.closest('button, [data-row-number]'))
      return;
    event.preventDefault();
    this.#host.startEdit();
  };

  readonly #click = (event: PointerEvent): void => {
    const target = targetOf(event);
    // A finger has neither keys nor a quick double click: its second tap opens what its first has chosen.
    if (event.pointerType === 'touch' && this.#again && !inEditor(event) && !target?.closest('button'))
      this.#host.startEdit();
    const menu = target?.closest<HTMLElement>('[data-menu]');
    if (menu) {
      const place = this.#placeOf(event);
      if (place) this.#host.goTo(place);
      this.#host.openMenu(menu);
      return;
    }
    const go = target?.closest<HTMLElement>('[data-go-item]');
    const part = target?.closest<HTMLElement>('[data-part]')?.dataset.part;
    const { addRow } = target?.closest<HTMLElement>('[data-add-row]')?.dataset ?? {};
    if (addRow !== undefined) {
      this.#addRow(part, addRow);
      return;
    }
    const { goItem, goField } = go?.dataset ?? {};
    if (part === undefined || goItem === undefined || goField === undefined) return;
    this.#host.goTo({ sheet: this.#host.map.sheet, part, item: goItem, field: goField });
  };

  /** Adds a row below the last one of a table. */
  #addRow(part: string | undefined, item: string): void {
    const { map } = this.#host;
    const [field] = map.rowAt(map.indexOf({ part: part ?? '', item }))?.fields ?? [];
    if (part === undefined || field === undefined) return;
    this.#host.goTo({ sheet: map.sheet, part, item, field });
    carryOut(this.#host, { kind: 'menu action', action: 'insert row' });
  }

  readonly #menu = (event: MouseEvent): void => {
    if (inEditor(event)) return;
    const place = this.#placeOf(event);
    if (!place) return;
    event.preventDefault();
    if (!this.#isSelected(place)) this.#host.goTo(place);
    this.#host.openMenu();
  };

  /** Whether a place is within the rows that are selected, which the menu is then for. */
  #isSelected(place: CellPlace): boolean {
    const { map, range } = this.#host;
    const index = map.indexOf(place);
    return range !== undefined && index >= range.top && index <= range.bottom && isWholeRows(map, range);
  }

  /** The place under the pointer; where no cell is the value of a line, and the first cell of a table's row. */
  #placeOf(event: MouseEvent): CellPlace | undefined {
    const target = targetOf(event);
    const part = target?.closest<HTMLElement>('[data-part]');
    const item = target?.closest<HTMLElement>('[data-item]');
    if (!part || !item || target?.closest('.table-foot')) return undefined;
    const { map } = this.#host;
    const at = { part: part.dataset.part ?? '', item: item.dataset.item ?? '' };
    const row = map.rowAt(map.indexOf(at));
    const field = target?.closest<HTMLElement>('[data-field]')?.dataset.field;
    const known = field !== undefined && row?.fields.includes(field) ? field : beside(row?.fields, target);
    return known === undefined ? undefined : { sheet: map.sheet, ...at, field: known };
  }
}

/** Of a line its value, which is what the page is about; of a table's row the first cell. */
function beside(fields: readonly string[] | undefined, target: Element | undefined): string | undefined {
  return target?.closest('.table-row') ? fields?.[0] : fields?.at(-1);
}

function targetOf(event: Event): Element | undefined {
  const [target] = event.composedPath();
  return target instanceof Element ? target : undefined;
}

function inEditor(event: Event): boolean {
  return event.composedPath().some((one) => one instanceof Element && one.classList.contains('edited'));
}
