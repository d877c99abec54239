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
import type { Pending } from '../../engine/index.ts';
import { type AppliedEdit, type Notebook, openNotebook } from '../../notebook/index.ts';
import type { Autosave, SaveState } from '../storage/autosave.ts';
import { type CellPlace, samePlace } from './place.ts';
import { createSlices, timeAtOnce } from './slices.ts';

/** Units as the book has them, or every quantity in one system. */
export type UnitsView = 'written' | 'SI' | 'US';

/** The lists of the overview. */
export type OverviewPart = 'checks' | 'problems' | 'remarks';

/**
 * What listeners hear. `changed` are ids of lines, columns and tables; `structure` tells that parts came or went; `back`
 * is the edit that takes the change back, undefined where the change is itself a step of undo or redo.
 */
export type SessionEvent =
  | {
      readonly kind: 'book';
      readonly changed: ReadonlySet<string>;
      readonly structure: boolean;
      readonly back: Edit | undefined;
    }
  /** Values that were not computed yet have come. */
  | { readonly kind: 'values'; readonly changed: ReadonlySet<string> }
  /** How far the work is that is left over. */
  | { readonly kind: 'computing' }
  | { readonly kind: 'units' }
  | { readonly kind: 'place' }
  | { readonly kind: 'kept' };

/** The one holder of state of an open book; elements read it and listen. */
export interface Session {
  readonly id: string;
  readonly notebook: Notebook;
  readonly units: UnitsView;
  readonly setUnits: (view: UnitsView) => void;
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
  readonly showSheet: (key: string) => void;
  /** Applies an edit, remembers it for undo with the place, has it kept, and tells the listeners. */
  readonly apply: (edit: Edit) => Outcome<AppliedEdit>;
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

/** Opens a session on a sound book, whose edits `autosave` stores. */
export function openSession(
  id: string,
  book: Book,
  autosave: Pick<Autosave, 'state' | 'save' | 'subscribe'>,
): Session {
  const notebook = openNotebook(book, timeAtOnce);
  const listeners = new Set<(event: SessionEvent) => void>();
  let remembered: Remembered = { history: emptyHistory, places: [], done: 0 };
  let units: UnitsView = 'written';
  let place: CellPlace | undefined;
  let sheet = book.sheets[0]?.key ?? '';
  let overview: OverviewPart | undefined;
  /** Where the person was before each jump. */
  const trail: CellPlace[] = [];

  const tell = (event: SessionEvent): void => {
    for (const listener of listeners) listener(event);
  };
  const slices = createSlices(notebook, {
    onValues: (changed) => tell({ kind: 'values', changed }),
    onProgress: () => tell({ kind: 'computing' }),
    isWatched: () => listeners.size > 0,
  });
  const carryOut = (edit: Edit, by: 'person' | 'history'): Outcome<AppliedEdit> => {
    const at = notebook.book.sheets.findIndex(({ key }) => key === sheet);
    const applied = notebook.apply(edit);
    if (!applied.ok) return applied;
    // First of all, so that nothing that comes after it can lose the edit.
    autosave.save(edit, notebook.book);
    const structure = edit.patches.some(({ kind }) => kind !== 'cells' && kind !== 'set');
    const { sheets } = notebook.book;
    // A sheet with a new key stands where it stood; in place of one that is gone, its neighbour is shown.
    if (!sheets.some(({ key }) => key === sheet))
      sheet = sheets[Math.max(0, Math.min(at, sheets.length - 1))]?.key ?? '';
    const back = by === 'person' ? applied.value.inverse : undefined;
    tell({ kind: 'book', changed: applied.value.changed, structure, back });
    slices.schedule();
    // Settings say in which units everything is shown.
    if (edit.patches.some((patch) => patch.kind === 'set' && patch.at[0] === 'settings'))
      tell({ kind: 'units' });
    return applied;
  };
  const moveTo = (next: CellPlace | undefined): void => {
    if (next && next.sheet !== sheet && notebook.book.sheets.some((one) => one.key === next.sheet))
      sheet = next.sheet;
    if (next) overview = undefined;
    place = next;
    tell({ kind: 'place' });
  };
  const step = (direction: 'undo' | 'redo'): boolean => {
    const move = (direction === 'undo' ? undo : redo)(remembered.history);
    if (!move) return false;
    if (!carryOut(move.edit, 'history').ok) return false;
    const { places, done } = remembered;
    const at = direction === 'undo' ? done - 1 : done;
    remembered = { history: move.history, places, done: direction === 'undo' ? done - 1 : done + 1 };
    moveTo(places[at]);
    return true;
  };
  autosave.subscribe(() => tell({ kind: 'kept' }));

  return {
    id,
    notebook,
    get units() {
      return units;
    },
    setUnits: (view) => {
      units = view;
      tell({ kind: 'units' });
    },
    get place() {
      return place;
    },
    get sheet() {
      return sheet;
    },
    goTo: (next) => {
      if (!samePlace(place, next)) moveTo(next);
    },
    jumpTo: (next) => {
      if (samePlace(place, next)) return;
      if (place) trail.push(place);
      moveTo(next);
    },
    goBack: () => {
      const before = trail.pop();
      if (before) moveTo(before);
      return before !== undefined;
    },
    get overview() {
      return overview;
    },
    showOverview: (part) => {
      if (place) trail.push(place);
      overview = part;
      place = undefined;
      tell({ kind: 'place' });
    },
    showSheet: (key) => {
      if (place) trail.push(place);
      overview = undefined;
      sheet = key;
      place = undefined;
      tell({ kind: 'place' });
    },
    apply: (edit) => {
      const applied = carryOut(edit, 'person');
      if (!applied.ok) return applied;
      const { history, places, done } = remembered;
      remembered = {
        history: record(history, edit, applied.value.inverse),
        places: [...places.slice(0, done), place],
        done: done + 1,
      };
      return applied;
    },
    undo: () => step('undo'),
    redo: () => step('redo'),
    get canUndo() {
      return undo(remembered.history) !== undefined;
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
      return () => listeners.delete(listener);
    },
  };
}
