import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { fail, type Outcome, problem, succeed } from '../../../diagnostics/index.ts';
import { type Copied, type Edit, findSheet, openCopied, type Row } from '../../../document/index.ts';
import { takeAlong } from '../../../notebook/index.ts';
import { readCarried } from '../../editing/cells/carry-unit.ts';
import { cellValueText } from '../../editing/cells/cell-value-text.ts';
import { selectedUnlike } from '../../editing/cells/selected-unlike.ts';
import { statementAt } from '../../editing/cells/state-target.ts';
import { choiceOptions, optionCalled } from '../../editing/choices/choice-options.ts';
import type { Block } from '../../editing/clipboard/block.ts';
import { CELLS_TYPE, readCells, writeCells } from '../../editing/clipboard/clipboard-text.ts';
import { headingText } from '../../editing/clipboard/heading-text.ts';
import { pasteIntoTable, pasteOntoLines } from '../../editing/clipboard/paste-cells.ts';
import { pasteForeign } from '../../editing/clipboard/paste-foreign.ts';
import { moveLines, type PastedLines, pasteCopies, pasteOver } from '../../editing/clipboard/paste-lines.ts';
import { pasteParts, pickParts } from '../../editing/clipboard/paste-parts.ts';
import { isStatedColumn, pasteStated } from '../../editing/clipboard/paste-stated.ts';
import { pasteText } from '../../editing/clipboard/paste-text.ts';
import { insertTableFor } from '../../editing/clipboard/table-from-text.ts';
import { findPlace } from '../../editing/find-place.ts';
import type { Change } from '../../editing/lines/line-edits.ts';
import type { Commit } from '../../editor/cell-edit.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { type CommandHost, dispatchCommand, reportRefusal, selectedCells } from '../place/commands.ts';
import { typesElsewhere } from '../place/focus-elsewhere.ts';
import { isWholeRows } from '../place/range.ts';
import { insertOneLine, isOneLine } from './field-paste.ts';

const ONE_CELL = { rows: 1, columns: 1 } as const;

type Host = CommandHost &
  ReactiveControllerHost &
  HTMLElement & { readonly editing: boolean; readonly commit: (commit: Commit) => void };

/** Copy, cut and paste on a page; not in the title block, which lies in a slot of it. */
export class ClipboardEvents implements ReactiveController {
  readonly #host: Host;
  /** The book as the last cut left it: as long as it is the same, moving what was cut is one step with the cut. */
  #afterCut: unknown;

  constructor(host: Host) {
    this.#host = host;
    for (const [type, does] of this.#doings) host.addEventListener(type, does);
    host.addController(this);
  }

  get #doings() {
    return [
      ['copy', this.#copy],
      ['cut', this.#cut],
      ['paste', this.#paste],
    ] as const;
  }

  hostConnected(): void {
    document.body.addEventListener('copy', this.#nowhere);
    document.body.addEventListener('cut', this.#nowhere);
    document.body.addEventListener('paste', this.#nowhere);
    document.body.addEventListener('paste', this.#elsewhere);
  }

  hostDisconnected(): void {
    document.body.removeEventListener('copy', this.#nowhere);
    document.body.removeEventListener('cut', this.#nowhere);
    document.body.removeEventListener('paste', this.#nowhere);
    document.body.removeEventListener('paste', this.#elsewhere);
  }

  /** On a sheet that has nothing yet, nothing of it can have the focus; elsewhere a press may have lost it. */
  readonly #nowhere = (event: ClipboardEvent): void => {
    if (event.target !== document.body) return;
    for (const [type, does] of this.#doings) if (type === event.type) does(event);
  };

  #isMeant({ target }: ClipboardEvent): boolean {
    return target === this.#host || target === document.body;
  }

  /** A paste while a button beside the page has the keys, as after a sheet was added: for a blank page, else answered. */
  readonly #elsewhere = (event: ClipboardEvent): void => {
    const path = event.composedPath();
    if (event.target === document.body || path.includes(this.#host) || typesElsewhere(this.#host)) return;
    if (path.some((one) => one instanceof Element && one.matches('dialog, [popover]'))) return;
    if (this.#host.place === undefined) this.#put(event);
    else this.#host.refuse(['nothing was pasted: click the cell that it goes to, and paste again']);
  };

  readonly #copy = (event: ClipboardEvent): void => {
    this.#take(event, false);
  };

  #take(event: ClipboardEvent, cut: boolean): void {
    if (!this.#isMeant(event) || this.#host.editing || !event.clipboardData) return;
    const selected = selectedCells(this.#host);
    if (selected.length === 0) return;
    event.preventDefault();
    const { notebook, units, id, sheet } = this.#host.session;
    const taken = selected.map((row) => row.map((place) => readCarried(notebook, place)));
    const whole = this.#wholeLines();
    const lines = whole ?? this.#describedLines();
    const calculated = (selected.at(-1) ?? []).flatMap((place, at) => {
      const found = findPlace(notebook.book, place);
      return found?.kind === 'cell' && found.column.kind !== 'given' ? [at] : [];
    });
    const stated = selected.map((row) =>
      row.map((place) => statementAt(notebook.book, place)?.reason ?? null),
    );
    const copied: Copied = {
      cells: taken.map((row) => row.map(({ text }) => text)),
      units: taken.map((row) => row.map(({ unit }) => unit ?? null)),
      ...(calculated.length > 0 && { calculated }),
      ...(stated.flat().some((reason) => reason !== null) && { stated }),
      ...(isHeaded(selected) && { headed: true }),
      ...(selected[0]?.[0] && this.#inTable(selected[0][0]) && { table: true }),
      ...(lines && { lines, ...(!whole && { partly: true }) }),
      ...this.#takenParts(lines),
      from: { book: id, sheet, cut },
    };
    event.clipboardData.setData(
      'text/plain',
      writeCells(
        selected.map((row) =>
          row.map((place) => headingText(notebook, place, units) ?? cellValueText(notebook, place, units)),
        ),
      ),
    );
    event.clipboardData.setData(CELLS_TYPE, JSON.stringify(copied));
  }

  /** The lines themselves, where the range holds nothing but whole lines. */
  #wholeLines(): readonly Row[] | undefined {
    const { range, map } = this.#host;
    return range && isWholeRows(map, range) ? this.#selectedLines() : undefined;
  }

  /** Several lines of which the range holds all that says what they are: the description, the value and what lies between. */
  #describedLines(): readonly Row[] | undefined {
    const selected = selectedCells(this.#host);
    const isDescribed = selected.every((row) =>
      ['label', 'value'].every((field) => row.some((place) => place.field === field)),
    );
    return selected.length > 1 && isDescribed ? this.#selectedLines() : undefined;
  }

  /** The lines of the rows selected; undefined where one of them is no line. */
  #selectedLines(): readonly Row[] | undefined {
    const { session } = this.#host;
    const lines = selectedCells(this.#host).map((row) => {
      const found = row[0] && findPlace(session.notebook.book, row[0]);
      return found?.kind === 'row' ? found.row : undefined;
    });
    const known = lines.filter((line) => line !== undefined);
    return known.length === lines.length ? known : undefined;
  }

  /** The parts that are selected, here and as they can be brought into other books. */
  #takenParts(lines: readonly Row[] | undefined): Pick<Copied, 'parts' | 'brought'> {
    const { range, map, session } = this.#host;
    const sheet = findSheet(session.notebook.book, session.sheet);
    if (!range || !sheet || !(lines || isWholeRows(map, range))) return {};
    const parts = pickParts(
      sheet,
      selectedCells(this.#host).flatMap(([first]) => first ?? []),
      lines !== undefined,
    );
    if (parts.length === 0) return {};
    const brought = takeAlong(session.notebook, sheet.key, parts);
    return { parts, ...(brought && { brought }) };
  }

  readonly #cut = (event: ClipboardEvent): void => {
    if (!this.#isMeant(event) || this.#host.editing) return;
    const whole = this.#wholeLines() !== undefined;
    this.#take(event, true);
    dispatchCommand(this.#host, { kind: whole ? 'delete lines' : 'clear' });
    this.#afterCut = whole ? this.#host.session.notebook.book : undefined;
  };

  readonly #paste = (event: ClipboardEvent): void => {
    if (this.#isMeant(event)) this.#put(event);
  };

  #put(event: ClipboardEvent): void {
    if (!event.clipboardData || !this.#leaveField(event)) return;
    const own = event.clipboardData.getData(CELLS_TYPE);
    const text = event.clipboardData.getData('text/plain');
    if (own === '' && text === '') return;
    event.preventDefault();
    const copied = own === '' ? undefined : openCopied(own);
    if (copied?.ok) {
      this.#pasteOwn(copied.value);
      return;
    }
    if (text !== '') this.#pasteForeign(text);
    const [fault] = copied?.problems ?? [];
    if (!fault) return;
    const { message, hints } = problem('copied-unsound', { from: 0, to: 0 }, { reason: fault.message });
    this.#host.refuse([[message, ...hints].join('; ')]);
  }

  /**
   * Enters what is being typed into a field of one line, or chosen from a list, where several cells or lines are pasted,
   * which it would run together. Says whether the paste is for the page then: one line is for the field or the list, and so
   * are formulas and prose for theirs.
   */
  #leaveField(event: ClipboardEvent): boolean {
    const host = this.#host;
    const { hand } = host.session;
    if (!host.editing || !hand) return true;
    if (hand.kind === 'prose' || hand.kind === 'formula') return false;
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (isOneLine(text)) {
      if (hand.kind === 'choice') {
        event.preventDefault();
        this.#choose(hand.place, text);
        return false;
      }
      insertOneLine(event, text);
      return false;
    }
    event.preventDefault();
    host.commit({ move: 'stay' });
    return !host.editing;
  }

  /** Takes one word for the choice whose list is open, as if it was typed. */
  #choose(place: CellPlace, text: string): void {
    const host = this.#host;
    const found = optionCalled(choiceOptions(host.session.notebook, place), text);
    host.session.changeDraft(found?.value ?? text.trim());
    host.commit({ move: 'stay' });
  }

  #pasteOwn(taken: Copied): void {
    const isOwn = taken.from?.book === this.#host.session.id;
    const selected = selectedCells(this.#host);
    const place = selected[0]?.[0];
    // Of lines not taken whole the cells go onto others; where there is no cell to go onto, the lines themselves come.
    const copied = isOwn && taken.partly && place ? cellsAlone(taken) : taken;
    if (copied.lines && (isOwn || !copied.brought)) {
      this.#pasteLines(copied.lines, copied.from);
      return;
    }
    if (copied.parts) {
      this.#pasteParts(copied, isOwn);
      return;
    }
    if (!place) {
      const [first = []] = copied.cells;
      const facts = { rows: copied.cells.length, columns: first.length, text: first[0] ?? '' };
      reportRefusal(this.#host, fail(problem('paste-on-nothing', { from: 0, to: 0 }, facts)));
      return;
    }
    if (!this.#goesOver(selected, copied.cells)) return;
    const { session } = this.#host;
    const { notebook } = session;
    const over = { rows: selected.length, columns: selected[0]?.length ?? 1 };
    if (this.#inTable(place)) {
      const block = withoutHeads(copied);
      if (isStatedColumn(notebook, place, block)) {
        this.#apply(pasteStated(notebook, place, 'written', block, over));
        return;
      }
      const within = selected.every(([first]) => first?.part === place.part && first.item !== 'head');
      this.#apply(pasteIntoTable(notebook, place, block, within ? over : undefined));
      return;
    }
    const many = over.rows * over.columns > 1;
    const targets = many || copied.table ? selected : this.#rectangle(place, copied);
    this.#apply(pasteOntoLines(notebook, targets, copied));
  }

  /** The cells that a block reaches from a cell of a line on, within the part that the line is in. */
  #rectangle(place: CellPlace, { cells }: Copied): readonly (readonly (CellPlace | undefined)[])[] {
    const { map } = this.#host;
    const index = map.indexOf(place);
    const first = map.rowAt(index)?.fields.indexOf(place.field) ?? 0;
    return cells.map((row, down) =>
      row.map((_, right) => {
        const target = map.rowAt(index + down);
        const field = target?.fields[first + right];
        return target?.part === place.part && field !== undefined
          ? { sheet: map.sheet, part: target.part, item: target.item, field }
          : undefined;
      }),
    );
  }

  /** Whether what is pasted can go over what is selected; says why not. */
  #goesOver(selected: readonly (readonly CellPlace[])[], cells: Block['cells']): boolean {
    const unlike = selectedUnlike(this.#host.session.notebook.book, selected, cells);
    return reportRefusal(this.#host, unlike ? fail(unlike) : succeed(undefined));
  }

  #inTable(place: CellPlace): boolean {
    const found = findPlace(this.#host.session.notebook.book, place);
    return found?.kind === 'cell' || (found?.kind === 'column' && place.item === 'head');
  }

  /** Takes the text of a file that was dropped: for the table there, after all is asked, or on a blank sheet as a paste. */
  drop(place: CellPlace | undefined, text: string): void {
    const { session, map } = this.#host;
    const found = place && findPlace(session.notebook.book, place);
    if (place && found?.part.kind === 'table') this.#host.askPasted(place, { text, over: ONE_CELL });
    else if (map.count === 0) this.#pasteBelow([], text);
    // On a line or words the text of a whole file would stand in place of what is there.
    else this.#host.refuse(['nothing was taken: drop the file on a table, or on a blank sheet']);
  }

  #pasteForeign(text: string): void {
    const { session } = this.#host;
    const { notebook, units } = session;
    const selected = selectedCells(this.#host);
    if (!this.#goesOver(selected, readCells(text))) return;
    const place = selected[0]?.[0];
    const part = place && findPlace(notebook.book, place)?.part;
    const title = part?.kind === 'table' && place?.item === '';
    if (!place || !(title || this.#inTable(place))) {
      this.#pasteBelow(selected, text);
      return;
    }
    const over = { rows: selected.length, columns: selected[0]?.length ?? 1 };
    const pasted = pasteText(notebook, place, units, text, over);
    if (!reportRefusal(this.#host, pasted)) return;
    if (pasted.value.kind === 'ask') this.#host.askPasted(place, { text, over });
    else reportRefusal(this.#host, session.apply(pasted.value.edit));
  }

  /** Pastes onto lines, or onto a sheet that has nothing: there, what stands under headings becomes a table of its own. */
  #pasteBelow(selected: readonly (readonly CellPlace[])[], text: string): void {
    const { session } = this.#host;
    const { notebook, sheet, units } = session;
    const pasted = pasteForeign(notebook, sheet, selected, units, text);
    const isBlank = this.#host.map.count === 0;
    const table = !pasted.ok && isBlank ? insertTableFor(notebook, sheet, undefined, text) : undefined;
    if (table) this.#host.askPasted(table.place, { text, over: ONE_CELL, newTable: table.edit });
    else this.#change(pasted);
  }

  #pasteLines(lines: readonly Row[], from: Copied['from']): void {
    const { session, range, map } = this.#host;
    const { sheet } = session;
    const selected = selectedCells(this.#host).flatMap(([first]) => first ?? []);
    const over = range && isWholeRows(map, range) && this.#wholeLines() ? selected : undefined;
    const to = { sheet, place: this.#host.place };
    const cut = from?.cut === true && from.book === session.id && !over;
    // What was cut a moment ago comes back first, so that the move is one step.
    if (cut && this.#afterCut === session.notebook.book) session.undo();
    this.#afterCut = undefined;
    const { book } = session.notebook;
    const moved = cut ? moveLines(book, from.sheet, lines, to) : undefined;
    const source = from && { sheet: from.sheet, book: from.book === session.id ? book : undefined };
    const change: PastedLines | undefined =
      moved ?? (over ? pasteOver(book, over, lines, source) : pasteCopies(book, to, lines, source));
    if (change && this.#change({ ok: true, value: change }) && change.remark !== undefined)
      this.#host.refuse([change.remark]);
  }

  #pasteParts({ parts = [], brought, from, lines }: Copied, isOwn: boolean): void {
    const { session, range, map } = this.#host;
    const { book } = session.notebook;
    const [sheet] = brought?.sheets ?? [];
    const copied =
      isOwn || !brought || !sheet
        ? { book, sheet: from?.sheet ?? session.sheet, parts }
        : { book: brought, sheet: sheet.key, parts: sheet.parts };
    const selected = selectedCells(this.#host).flatMap(([first]) => first ?? []);
    const over = lines && range && isWholeRows(map, range) && this.#wholeLines() ? selected : [];
    const to = { sheet: session.sheet, place: this.#host.place };
    this.#change(pasteParts(book, to, copied, { over, areLines: lines !== undefined }));
  }

  #apply(edit: Outcome<Edit>): void {
    if (reportRefusal(this.#host, edit)) reportRefusal(this.#host, this.#host.session.apply(edit.value));
  }

  /** Makes a change, and says whether it was made. */
  #change(change: Outcome<Change>): boolean {
    if (!reportRefusal(this.#host, change)) return false;
    const { edit, place } = change.value;
    if (!reportRefusal(this.#host, this.#host.session.apply(edit))) return false;
    if (place) this.#host.goTo(place);
    return true;
  }
}

/** Whether the first row of some cells are the headings of the table that all of them are in. */
function isHeaded(selected: readonly (readonly CellPlace[])[]): boolean {
  const [head, ...rows] = selected.flatMap(([first]) => first ?? []);
  return head?.item === 'head' && rows.length > 0 && rows.every(({ part }) => part === head.part);
}

/** Of lines that were not taken whole the cells, as they go onto others of their own book. */
function cellsAlone({ lines: _, parts: __, brought: ___, partly: ____, ...cells }: Copied): Copied {
  return cells;
}

/** The cells that stand below headings. */
function withoutHeads(copied: Copied): Block {
  const { cells, units, stated, headed } = copied;
  if (!headed) return copied;
  return {
    ...copied,
    cells: cells.slice(1),
    ...(units && { units: units.slice(1) }),
    ...(stated && { stated: stated.slice(1) }),
  };
}
