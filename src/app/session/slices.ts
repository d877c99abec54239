import type { Allowance } from '../../engine/index.ts';
import type { ChangedLines, Notebook } from '../../notebook/index.ts';

/** What an edit may take at once, in milliseconds, before the page answers. */
const AT_ONCE = 50;
/** What a slice of further work may take, so that keys and scrolling are answered in between. */
const SLICE = 15;
/** How often the progress is told. */
const TOLD_EVERY = 200;

/** The time given to an edit, or to the opening of a book. */
export function timeAtOnce(): Allowance {
  return timeOf(AT_ONCE);
}

/** The time given to a slice of work for which nobody waits. */
export function timeOfSlice(): Allowance {
  return timeOf(SLICE);
}

function timeOf(milliseconds: number): Allowance {
  const end = performance.now() + milliseconds;
  return { isOver: () => performance.now() > end };
}

/** Computes in slices what an edit has left over. */
export interface Slices {
  /** Goes on as long as something is left, unless the person has stopped it. */
  readonly schedule: () => void;
  readonly stop: () => void;
  readonly resume: () => void;
  readonly isStopped: boolean;
}

/** Who hears of the slices. */
export interface SliceListener {
  /** Values have come; more may be left. */
  readonly onValues: (changed: ChangedLines) => void;
  readonly onProgress: () => void;
  /** Whether anybody still looks at the book. */
  readonly isWatched: () => boolean;
}

/** Slices between which the page paints and hears its keys. */
export function createSlices(notebook: Notebook, listener: SliceListener): Slices {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let stopped = false;
  let told = Number.NEGATIVE_INFINITY;

  const schedule = (): void => {
    if (timer !== undefined || stopped || !notebook.pending || !listener.isWatched()) return;
    timer = setTimeout(slice);
  };
  const slice = (): void => {
    timer = undefined;
    if (stopped || !notebook.pending) return;
    const changed = notebook.proceed(timeOfSlice());
    if (changed.size > 0) listener.onValues(changed);
    if (performance.now() - told > TOLD_EVERY || !notebook.pending) {
      told = performance.now();
      listener.onProgress();
    }
    schedule();
  };

  return {
    schedule,
    stop: () => {
      stopped = true;
      clearTimeout(timer);
      timer = undefined;
      listener.onProgress();
    },
    resume: () => {
      stopped = false;
      schedule();
      listener.onProgress();
    },
    get isStopped() {
      return stopped;
    },
  };
}
