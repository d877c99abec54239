import type { CellPlace } from '../../view-model/place.ts';
import { samePlace } from '../../view-model/place.ts';
import type { CommandHost } from './commands.ts';
import { blankAt } from './focus-elsewhere.ts';
import { clickFoot } from './foot-clicks.ts';
import { tableRow } from './grid-map.ts';
import { isNear } from './near.ts';
import { PressedButton } from './pressed-button.ts';
import { isWholeRows } from './range.ts';
import { isSecondPress, type PressPoint } from './second-press.ts';

type Host = Omit<CommandHost, 'openMenu'> &
  HTMLElement & {
    readonly openMenu: (below?: HTMLElement) => void;
    readonly editing: boolean;
    readonly goToFirstLine: () => void;
  };

/** Where and when a press began, and the cell it was on. */
interface Press extends PressPoint {
  readonly place: CellPlace;
}

/** What the pointer does on a page: choose, extend, edit, open menus. */
export class PointerEvents {
  readonly #host: Host;
  readonly #button: PressedButton;
  #dragging = false;
  /** The row of a table at whose number the press under way began. */
  #rowFrom: CellPlace | undefined;
  /** Whether the press under way began on the cell that was chosen already. */
  #again = false;
  /** Whether the press under way opens the list of its cell when it is let go, unless a range is drawn with it. */
  #opens = false;
  /** The press under way or the last one; undefined once the page was scrolled under it. */
  #press: Press | undefined;
  /** Whether the press under way was taken for the second one of a double click, before the browser says so. */
  #isSecond = false;
  /** Whether the pointer has gone further than a hand that rests moves it. */
  #isDrawing = false;

  constructor(host: Host) {
    this.#host = host;
    this.#button = new PressedButton(host);
    host.addEventListener('pointerdown', this.#down);
    host.addEventListener('pointermove', this.#move);
    host.addEventListener('mousedown', this.#notSecond);
    host.addEventListener('dblclick', this.#twice);
    host.addEventListener('click', this.#click);
    host.addEventListener('contextmenu', this.#menu);
    host.addEventListener('wheel', this.#wheel, { passive: true });
  }

  readonly #down = (event: PointerEvent): void => {
    this.#again = false;
    this.#opens = false;
    if (inEditor(event)) return;
    const place = this.#aimOf(event);
    if (event.button !== 0) return;
    if (!place) {
      if (!this.#host.place && blankAt(event, this.#host) === 'page') this.#host.goToFirstLine();
      return;
    }
    this.#dragging = !inPath(event, 'button');
    this.#isDrawing = false;
    this.#rowFrom = undefined;
    if (inPath(event, '[data-row-number]')) {
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
    this.#opens = this.#again && !event.shiftKey && inPath(event, '[data-open]') !== undefined;
  };

  /** The browser counts clicks as the system does: what it calls the first press means what it is on. */
  readonly #notSecond = (event: MouseEvent): void => {
    const place = this.#isSecond && event.detail < 2 && event.button === 0 ? this.placeOf(event) : undefined;
    this.#isSecond = false;
    if (!place || !this.#press || inEditor(event) || samePlace(place, this.#press.place)) return;
    this.#press = { ...this.#press, place };
    this.#host.goTo(place, event.shiftKey);
  };

  readonly #move = (event: PointerEvent): void => {
    if (!this.#dragging || this.#host.editing) return;
    if (event.buttons !== 1) {
      this.#dragging = false;
      return;
    }
    // Lines move under a hand that rests: an editor has closed, a line has expanded. That is no drag.
    if (!this.#isDrawing && this.#press && isNear(event, this.#press)) return;
    this.#isDrawing = true;
    const place = this.placeOf(event);
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

  readonly #wheel = (): void => {
    this.#press = undefined;
  };

  readonly #twice = (event: MouseEvent): void => {
    const place = this.#press?.place ?? this.placeOf(event);
    if (inEditor(event) || !place || this.#host.editing) return;
    const isButton = inPath(event, 'button') && !this.#button.isStrange(event);
    if (isButton || inPath(event, '[data-row-number]')) return;
    event.preventDefault();
    this.#host.startEdit();
  };

  readonly #click = (event: PointerEvent): void => {
    const opens = this.#opens && !this.#host.range && !inEditor(event);
    this.#opens = false;
    if (opens) {
      this.#host.startEdit();
      return;
    }
    // A finger has neither keys nor a quick double click: its second tap opens what its first has chosen.
    if (event.pointerType === 'touch' && this.#again && !inEditor(event) && !inPath(event, 'button'))
      this.#host.startEdit();
    const menu = inPath(event, '[data-menu]');
    if (menu) {
      const place = this.placeOf(event);
      if (place) this.#host.goTo(place);
      this.#host.openMenu(menu);
      return;
    }
    if (clickFoot(this.#host, targetOf(event))) return;
    const go = inPath(event, '[data-go-item]');
    const part = inPath(event, '[data-part]')?.dataset.part;
    const { goItem, goField } = go?.dataset ?? {};
    if (part === undefined || goItem === undefined || goField === undefined) return;
    this.#host.goTo({ sheet: this.#host.map.sheet, part, item: goItem, field: goField });
  };

  readonly #menu = (event: MouseEvent): void => {
    if (inEditor(event)) return;
    const aim = this.#press && isNear(event, this.#press) ? this.#press.place : undefined;
    const place = aim ?? this.placeOf(event);
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

  /**
   * The place that a press means: of the second one of a double click that of the first, for lines may have moved in
   * between; not where the person has gone elsewhere since.
   */
  #aimOf(event: PointerEvent): CellPlace | undefined {
    const last = this.#press;
    this.#press = undefined;
    // Nothing opens at the number of a row, so that each press there is one of its own.
    const opens = !inPath(event, '[data-row-number]');
    const stayed = opens && samePlace(last?.place, this.#host.place);
    const second = last && stayed && isSecondPress(event, last);
    this.#isSecond = second === true;
    const place = second ? last.place : this.placeOf(event);
    if (!place) return undefined;
    const { clientX, clientY, timeStamp } = event;
    this.#press = { clientX, clientY, timeStamp, place };
    return place;
  }

  /** The place under the pointer; where no cell is the value of a line, and the first cell of a table's row. */
  placeOf(event: MouseEvent): CellPlace | undefined {
    const part = inPath(event, '[data-part]');
    const item = inPath(event, '[data-item]');
    if (!part || !item || inPath(event, '.table-foot')) return undefined;
    const { map } = this.#host;
    const at = { part: part.dataset.part ?? '', item: item.dataset.item ?? '' };
    const row = map.rowAt(map.indexOf(at));
    const field = inPath(event, '[data-field]')?.dataset.field;
    const known = field !== undefined && row?.fields.includes(field) ? field : beside(row?.fields, event);
    return known === undefined ? undefined : { sheet: map.sheet, ...at, field: known };
  }
}

/** Of a line its value, which is what the page is about; of a table's row the first cell. */
function beside(fields: readonly string[] | undefined, event: Event): string | undefined {
  return inPath(event, '.table-row') ? fields?.[0] : fields?.at(-1);
}

function targetOf(event: Event): Element | undefined {
  const [target] = event.composedPath();
  return target instanceof Element ? target : undefined;
}

/** What an event came through. What was in hand is entered first, which may have drawn anew what the press was on: its way is as it was. */
function inPath(event: Event, selector: string): HTMLElement | undefined {
  return event
    .composedPath()
    .find((one): one is HTMLElement => one instanceof HTMLElement && one.matches(selector));
}

function inEditor(event: Event): boolean {
  return inPath(event, '.edited') !== undefined;
}
