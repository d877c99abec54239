import type { Outcome } from '../../diagnostics/index.ts';
import {
  type Book,
  type Edit,
  emptyHistory,
  type History,
  record,
  redo,
  undo,
} from '../../document/index.ts';
import type { Allowance, Pending } from '../../engine/index.ts';
import type { CheckOrder } from '../../figures/index.ts';
import {
  type AppliedEdit,
  type ChangedLines,
  type Dangling,
  type Notebook,
  openNotebook,
  type Side,
} from '../../notebook/index.ts';
import type { UnitsView } from '../../record/index.ts';
import { groupedSheets } from '../../record/index.ts';
import { contentInHand, draftEdit, typedOverAs } from '../editing/cells/enter-draft.ts';
import { findPlace } from '../editing/find-place.ts';
import { placeInForce } from '../editing/methods/method-place.ts';
import type { Autosave, SaveState } from '../storage/autosave.ts';
import { storeCheckOrder, storedCheckOrder } from '../storage/check-order.ts';
import { storeChecker, storedChecker } from '../storage/checker.ts';
import { type Drafts, noDrafts } from '../storage/drafts.ts';
import { storedInSight, storeInSight } from '../storage/in-sight.ts';
import { noPageViews, type PageViews } from '../storage/page-views.ts';
import type { EditInHand, SelectedText } from '../view-model/edit-in-hand.ts';
import type { OverviewPart, PageView } from '../view-model/page-view.ts';
import { type CellPlace, isOffPage, methodFieldOf, samePlace } from '../view-model/place.ts';
import { createAtRest } from './at-rest.ts';
import { type CheckMark, createCheckMarks } from './check-marks.ts';
import { followEdit, reopenEdit, type Strayed } from './follow-hand.ts';
import { createOriginMarks } from './origin-marks.ts';
import type { RecheckState } from './recheck-state.ts';
import { createSlices, timeAtOnce, timeOfSlice } from './slices.ts';
import { afterWayOut, isChanged, type WayOut } from './way-out.ts';

/** The lists of the overview, and the pages of what the book is about and what its references are. */

/**
 * What listeners hear. `changed` are ids of lines, columns and tables; `structure` tells that parts came or went; `back`
 * is the edit that takes the change back, undefined where the change is itself a step of undo or redo; `dangling` is what was
 * left without something it used.
 */
export type SessionEvent =
  | {
      readonly kind: 'book';
      readonly changed: ChangedLines;
      readonly structure: boolean;
      readonly back: Edit | undefined;
      readonly dangling: Dangling;
    }
  /** Values that were not computed yet have come, or what is to be said of them. */
  | { readonly kind: 'values'; readonly changed: ChangedLines }
  /** How far the work is that is left over. */
  | { readonly kind: 'computing' }
  | { readonly kind: 'units' }
  /** All checks stand in another order. */
  | { readonly kind: 'order' }
  /** Another line is kept in sight, or none. */
  | { readonly kind: 'in sight' }
  /** Others’ initials stand beside what is checked from now on. */
  | { readonly kind: 'checker' }
  /** The second engine stands otherwise, or the person asks something of it. */
  | { readonly kind: 'recheck'; readonly asks?: RecheckWish }
  /** `turned`: a sheet was turned to, and a button that turned to it keeps the focus. */
  | { readonly kind: 'place'; readonly turned: boolean }
  /** Something was taken in hand or is no longer, or something is to be said of it; not each letter of it. */
  | { readonly kind: 'hand' }
  | { readonly kind: 'kept' };

/** What a person asks of the second engine. */
export type RecheckWish = 'cancel' | 'begin';

/** The one holder of state of an open book; elements read it and listen. */
export interface Session {
  readonly id: string;
  readonly notebook: Notebook;
  readonly units: UnitsView;
  readonly setUnits: (view: UnitsView) => void;
  /** How the page of all checks lists them, on paper too; remembered for all books. */
  readonly checkOrder: CheckOrder;
  readonly setCheckOrder: (order: CheckOrder) => void;
  /** The id of the line whose value is kept in sight; remembered for all books, and for one without it without effect. */
  readonly inSight: string | undefined;
  readonly keepInSight: (id: string | undefined) => void;
  /** How far a line has come in checking, as it was when the person last paused; undefined where nothing is said of it. */
  readonly checkMark: (id: string) => CheckMark | undefined;
  /** What of a line is otherwise than where its sheet came from, as it was when the person last paused. */
  readonly originMark: (id: string) => string | undefined;
  /** The initials of who checks; remembered for all books. */
  readonly checker: string;
  readonly setChecker: (by: string) => void;
  /** How the second engine stands with the book as it is. */
  readonly recheck: RecheckState;
  readonly setRecheck: (state: RecheckState) => void;
  /** Ends a recheck under way, or begins one. */
  readonly askRecheck: (wish: RecheckWish) => void;
  readonly place: CellPlace | undefined;
  /** The key of the sheet shown. */
  readonly sheet: string;
  /** The list that was asked for, where the overview is shown in place of a sheet. */
  readonly overview: OverviewPart | undefined;
  readonly goTo: (place: CellPlace) => void;
  /** The same from afar: {@link goBack} leads back to where the person was. */
  readonly jumpTo: (place: CellPlace) => void;
  /** Goes back to where the person was before the last jump; false if there was none. */
  readonly goBack: () => boolean;
  readonly showOverview: (part: OverviewPart) => void;
  /** Shows the steps to the value at a place, which stays chosen beside them. */
  readonly showSteps: (to: CellPlace) => void;
  readonly showSheet: (key: string) => void;
  /** Turns so many sheets on in the order of their list; the overview stands in front of the first. */
  readonly turnSheet: (step: number) => void;
  /** Applies an edit, remembers it for undo with the place, has it kept, and tells the listeners. */
  readonly apply: (edit: Edit) => Outcome<AppliedEdit>;
  /** The same of what no step of undo takes back: a signature, a revision that is issued. */
  readonly applyForGood: (edit: Edit) => Outcome<AppliedEdit>;
  /** What is being typed. */
  readonly hand: EditInHand | undefined;
  /** Whether what is being typed is noted beside the book, so that it outlives the page. */
  readonly handNoted: boolean;
  /**
   * Takes a place in hand to be typed in, `over` in place of what it holds; false where nothing can be typed. `as` asks for
   * one of what a calculated place holds: the value stated there, the reason for it, the formula beside it; of a check for
   * one `side`.
   */
  readonly beginEdit: (
    place: CellPlace,
    over?: string,
    as?: 'entry' | 'reason' | 'formula',
    side?: Side,
  ) => boolean;
  /** Takes note of what was typed so far. */
  readonly changeDraft: (draft: string, selected?: SelectedText) => void;
  /** Takes note of what an input method has composed in the cell in hand so far; `done` once the rest is typed in a field. */
  readonly composeDraft: (draft: string, done: boolean) => void;
  /** Turns away from what is being typed; false while it stays in hand. */
  readonly endEdit: (way: WayOut) => boolean;
  /** What was typed for a place that is gone: it waits until the person has taken it. */
  readonly strayed: Strayed | undefined;
  readonly forgetStrayed: () => void;
  readonly undo: () => boolean;
  readonly redo: () => boolean;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** Whether the book as it stands here is stored. */
  readonly kept: SaveState;
  /** The work that is left over from the last edit or from opening; undefined where everything is computed. */
  readonly computing: Computing | undefined;
  readonly stopComputing: () => void;
  readonly resumeComputing: () => void;
  readonly subscribe: (listener: (event: SessionEvent) => void) => () => void;
}

/** Work done bit by bit, or stopped by the person. */
export interface Computing extends Pending {
  readonly isStopped: boolean;
}

interface Remembered {
  readonly history: History;
  /** The place at each step of the history, by its number of steps done. */
  readonly places: readonly (CellPlace | undefined)[];
  readonly done: number;
}

/**
 * Opens a session on a sound book, whose edits `autosave` stores, with what was being typed in it when its page went away,
 * on the page that was shown then.
 * What takes longer than `atOnce` allows is computed bit by bit.
 */
export function openSession(
  id: string,
  book: Book,
  autosave: Pick<Autosave, 'state' | 'save' | 'subscribe'>,
  drafts: Drafts = noDrafts,
  views: PageViews = noPageViews,
  atOnce: () => Allowance = timeAtOnce,
): Session {
  const notebook = openNotebook(book, atOnce);
  const listeners = new Set<(event: SessionEvent) => void>();
  const marks = createCheckMarks();
  const originMarks = createOriginMarks();
  let remembered: Remembered = { history: emptyHistory, places: [], done: 0 };
  let units: UnitsView = 'written';
  let checkOrder = storedCheckOrder();
  let inSight = storedInSight();
  let checker = storedChecker();
  let recheck: RecheckState = { kind: 'waiting for a pause' };
  let place: CellPlace | undefined;
  let sheet = book.sheets[0]?.key ?? '';
  let overview: OverviewPart | undefined;
  /** Where the person was before each jump. */
  const trail: PageView[] = [];
  /** Where the person was last on each sheet. */
  const lastOn = new Map<string, CellPlace>();
  let hand: EditInHand | undefined;
  let handNoted = true;
  let strayed: Strayed | undefined;

  const tell = (event: SessionEvent): void => {
    for (const listener of listeners) listener(event);
  };
  const isWatched = (): boolean => listeners.size > 0;
  const onJudged = (changed: ChangedLines): void => tell({ kind: 'values', changed });
  const onDone = (): void => {
    for (const changed of [marks.update(notebook), originMarks.update(notebook)])
      if (changed.size > 0) tell({ kind: 'values', changed });
  };
  const rest = createAtRest(notebook, { onJudged, onDone, isWatched, timeOfBit: timeOfSlice });
  const slices = createSlices(notebook, {
    onValues: (changed) => {
      tell({ kind: 'values', changed });
      rest.begin();
    },
    onProgress: () => tell({ kind: 'computing' }),
    isWatched,
  });
  const dispatch = (edit: Edit, by: 'person' | 'history'): Outcome<AppliedEdit> => {
    const before = notebook.book;
    const at = before.sheets.findIndex(({ key }) => key === sheet);
    const applied = notebook.apply(edit);
    if (!applied.ok) return applied;
    // First of all, so that nothing that comes after it can lose the edit.
    autosave.save(edit, notebook.book);
    const followed = hand && follow(hand, edit, before);
    const structure = edit.patches.some(
      ({ kind, at: [top] }) => kind !== 'cells' && kind !== 'set' && top !== 'review',
    );
    const { sheets } = notebook.book;
    // A sheet with a new key stands where it stood; in place of one that is gone, its neighbour is shown.
    if (!sheets.some(({ key }) => key === sheet))
      sheet = sheets[Math.max(0, Math.min(at, sheets.length - 1))]?.key ?? '';
    const back = by === 'person' ? applied.value.inverse : undefined;
    const { changed, dangling } = applied.value;
    tell({ kind: 'book', changed, structure, back, dangling });
    slices.schedule();
    rest.begin();
    if (followed) tell({ kind: 'hand' });
    // Settings say in which units everything is shown.
    if (edit.patches.some((patch) => patch.kind === 'set' && patch.at[0] === 'settings'))
      tell({ kind: 'units' });
    return applied;
  };
  const moveTo = (next: CellPlace | undefined, turned = false, page?: OverviewPart): void => {
    if (next && next.sheet !== sheet && notebook.book.sheets.some((one) => one.key === next.sheet))
      sheet = next.sheet;
    if (next) {
      overview = page;
      lastOn.set(next.sheet, next);
    }
    place = next;
    noteView();
    tell({ kind: 'place', turned });
  };
  const noteView = (): void => views.write(id, { ...view(), ...(units !== 'written' && { units }) });
  const view = (): PageView => ({ sheet, ...(overview && { overview }), ...(place && { place }) });
  const hasSheet = (key: string): boolean => notebook.book.sheets.some((one) => one.key === key);
  const isThere = (at: CellPlace | undefined): at is CellPlace =>
    at !== undefined && findPlace(notebook.book, at) !== undefined;
  /** Notes where the person is, who is about to go elsewhere. */
  const leaveTrail = (): void => {
    if (!sameView(trail.at(-1), view())) trail.push(view());
  };
  const hold = (next: EditInHand | undefined): void => {
    hand = next;
    const typed = next && isChanged(next) ? next : undefined;
    handNoted = drafts.write(id, typed) || typed === undefined;
  };
  /** What is in hand goes where its place went; what has no place any more waits beside the book. True if anything came of it. */
  const follow = (held: EditInHand, edit: Edit, before: Book): boolean => {
    const followed = followEdit(held, edit, before, notebook);
    if (followed === held) return false;
    if (followed && 'strayed' in followed) {
      strayed = followed.strayed;
      // Its note stays until the person has taken what was typed.
      hand = undefined;
    } else {
      hold(followed);
      if (followed && samePlace(place, held.place)) place = followed.place;
    }
    return true;
  };
  const applyByPerson = (edit: Edit, at: CellPlace | undefined): Outcome<AppliedEdit> => {
    const applied = dispatch(edit, 'person');
    if (!applied.ok) return applied;
    const { history, places, done } = remembered;
    remembered = {
      history: record(history, edit, applied.value.inverse),
      places: [...places.slice(0, done), at],
      done: done + 1,
    };
    return applied;
  };
  const endEdit = (way: WayOut): boolean => {
    const held = hand;
    if (!held) return true;
    const left = afterWayOut(held, way, (draft) => {
      const edit = draftEdit(notebook, draft, way === 'offer');
      if (!edit.ok || !edit.value) return edit;
      // Whoever hears of the edit finds it entered, and no more in hand.
      hand = undefined;
      return applyByPerson(edit.value, isOffPage(draft.place) ? place : draft.place);
    });
    if (left === held) return false;
    hold(left);
    tell({ kind: 'hand' });
    return left === undefined;
  };
  const step = (direction: 'undo' | 'redo'): boolean => {
    if (!endEdit('history')) return false;
    const move = (direction === 'undo' ? undo : redo)(remembered.history);
    if (!move || !dispatch(move.edit, 'history').ok) return false;
    const { places, done } = remembered;
    const at = direction === 'undo' ? done - 1 : done;
    remembered = { history: move.history, places, done: direction === 'undo' ? done - 1 : done + 1 };
    moveTo(places[at]);
    return true;
  };
  autosave.subscribe(() => tell({ kind: 'kept' }));

  const noted = drafts.read(id);
  if (noted) {
    const reopened = reopenEdit(noted, notebook);
    if (reopened && 'strayed' in reopened) strayed = reopened.strayed;
    else if (reopened) {
      hand = reopened;
      units = reopened.units;
      const { method: _, ...cell } = reopened.place;
      const isListed = methodFieldOf(reopened.place) !== undefined;
      if (isListed || !isOffPage(reopened.place)) {
        place = isListed ? { ...cell, field: 'value' } : reopened.place;
        sheet = place.sheet;
        lastOn.set(sheet, place);
      }
    }
  }
  const shown = hand ? undefined : views.read(id);
  if (shown && hasSheet(shown.sheet)) {
    ({ sheet, overview } = { overview: undefined, ...shown });
    ({ units = units } = shown);
    if (isThere(shown.place) && !isOffPage(shown.place)) {
      ({ place } = shown);
      lastOn.set(sheet, shown.place);
    }
  }

  return {
    id,
    notebook,
    get units() {
      return units;
    },
    setUnits: (wanted) => {
      if (endEdit('units')) units = wanted;
      noteView();
      tell({ kind: 'units' });
    },
    get checkOrder() {
      return checkOrder;
    },
    setCheckOrder(order) {
      checkOrder = order;
      storeCheckOrder(order);
      tell({ kind: 'order' });
    },
    get inSight() {
      return inSight;
    },
    keepInSight(id) {
      inSight = id;
      storeInSight(id);
      tell({ kind: 'in sight' });
    },
    checkMark: (id) => marks.of(id),
    originMark: (id) => originMarks.of(id),
    get checker() {
      return checker;
    },
    setChecker(by) {
      checker = by.trim();
      storeChecker(checker);
      tell({ kind: 'checker' });
    },
    get recheck() {
      return recheck;
    },
    setRecheck(state) {
      recheck = state;
      tell({ kind: 'recheck' });
    },
    askRecheck: (asks) => tell({ kind: 'recheck', asks }),
    get place() {
      return place;
    },
    get sheet() {
      return sheet;
    },
    goTo: (next) => {
      if (!samePlace(place, next) && endEdit('elsewhere')) moveTo(next);
    },
    jumpTo: (next) => {
      const same = samePlace(place, next);
      // Whoever asks for the place they type in goes on there.
      if ((same && hand) || !endEdit('elsewhere')) return;
      if (!same || overview) leaveTrail();
      moveTo(next);
    },
    goBack: () => {
      if (trail.length === 0 || !endEdit('elsewhere')) return false;
      for (let before = trail.pop(); before; before = trail.pop()) {
        if (!hasSheet(before.sheet) || sameView(before, view())) continue;
        ({ sheet, overview } = { overview: undefined, ...before });
        const isPlace = before.place !== undefined && (isOffPage(before.place) || isThere(before.place));
        moveTo(isPlace ? before.place : undefined, !isPlace, overview);
        return true;
      }
      return false;
    },
    get overview() {
      return overview;
    },
    showOverview: (part) => {
      if (!endEdit('elsewhere')) return;
      leaveTrail();
      overview = part;
      moveTo(undefined, true);
    },
    showSteps: (to) => {
      if (!endEdit('elsewhere')) return;
      leaveTrail();
      moveTo(to, true, 'steps');
    },
    showSheet: (key) => {
      if (!endEdit('elsewhere')) return;
      leaveTrail();
      overview = undefined;
      sheet = key;
      const last = lastOn.get(key);
      moveTo(isThere(last) ? last : undefined, true);
    },
    turnSheet(step) {
      const sheets = [...groupedSheets(notebook.book).values()].flat();
      const at = overview ? -1 : sheets.findIndex(({ key }) => key === sheet);
      const next = sheets[at + step];
      if (next) this.showSheet(next.key);
      else if (at + step === -1) this.showOverview('checks');
    },
    apply: (edit) => applyByPerson(edit, place),
    applyForGood: (edit) => dispatch(edit, 'history'),
    get hand() {
      return hand;
    },
    get handNoted() {
      return handNoted;
    },
    beginEdit: (wanted, over, as, side) => {
      if (!endEdit('elsewhere')) return false;
      const at = placeInForce(notebook, wanted);
      const what = over === undefined ? as : (typedOverAs(notebook, at, over) ?? as);
      const { kind, text } = contentInHand(notebook, at, units, what, side);
      if (kind === undefined) return false;
      // An option is looked for by its letters; they are none themselves.
      const isChoice = kind === 'choice';
      const draft = isChoice ? text : (over ?? text);
      const letters = isChoice && over !== undefined ? { letters: over } : {};
      const of = side && { side };
      hold({ place: at, kind, ...of, held: text, draft, ...letters, typedOver: over !== undefined, units });
      tell({ kind: 'hand' });
      return true;
    },
    changeDraft: (draft, selected) => {
      if (!hand) return;
      const { place: at, kind, side, held, typedOver, units: meant, remarks } = hand;
      const of = side && { side };
      hold({ place: at, kind, ...of, held, draft, ...(selected && { selected }), typedOver, units: meant });
      // What was said of the draft before is no longer so.
      if (remarks) tell({ kind: 'hand' });
    },
    composeDraft: (draft, done) => {
      if (!hand) return;
      hold({ ...hand, draft, composing: !done });
      tell({ kind: 'hand' });
    },
    endEdit,
    get strayed() {
      return strayed;
    },
    forgetStrayed: () => {
      strayed = undefined;
      drafts.write(id, hand);
      tell({ kind: 'hand' });
    },
    undo: () => step('undo'),
    redo: () => step('redo'),
    get canUndo() {
      // What is in hand is entered first, and taken back.
      return hand !== undefined || undo(remembered.history) !== undefined;
    },
    get canRedo() {
      return redo(remembered.history) !== undefined;
    },
    get kept() {
      return autosave.state;
    },
    get computing() {
      const { pending } = notebook;
      return pending && { ...pending, isStopped: slices.isStopped };
    },
    stopComputing: slices.stop,
    resumeComputing: slices.resume,
    subscribe: (listener) => {
      listeners.add(listener);
      slices.schedule();
      rest.begin();
      return () => listeners.delete(listener);
    },
  };
}

/** Whether two views show the same page and place. */
function sameView(a: PageView | undefined, b: PageView): boolean {
  return a?.sheet === b.sheet && a.overview === b.overview && samePlace(a.place, b.place);
}
