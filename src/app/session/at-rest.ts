import type { Allowance } from '../../engine/index.ts';
import type { ChangedLines, Notebook } from '../../notebook/index.ts';

/** How long nothing has happened to the book when the person is taken to rest, in milliseconds. */
const PAUSE = 300;

/** Works out at rest what need not be there with the keystroke. */
export interface AtRest {
  /** Says that the book or its values have changed: the pause begins anew. */
  readonly begin: () => void;
}

/** Works out which checks stated values ease, bit by bit, once the person pauses; `onJudged` hears of these checks. */
export function createAtRest(
  notebook: Pick<Notebook, 'judgeStated' | 'pending'>,
  listener: {
    readonly onJudged: (checks: ChangedLines) => void;
    /** Everything else has been worked out. */
    readonly onDone: () => void;
    /** Whether anybody still looks at the book. */
    readonly isWatched: () => boolean;
    /** The time given to a bit. */
    readonly timeOfBit: () => Allowance;
  },
): AtRest {
  let timer: ReturnType<typeof setTimeout> | undefined;

  const after = (milliseconds: number): void => {
    clearTimeout(timer);
    timer = setTimeout(bit, milliseconds);
  };
  const bit = (): void => {
    timer = undefined;
    // What is still being computed begins the pause anew when it comes.
    if (!listener.isWatched() || notebook.pending) return;
    const judged = notebook.judgeStated(listener.timeOfBit());
    if (judged === undefined) {
      after(0);
      return;
    }
    if (judged.size > 0) listener.onJudged(judged);
    listener.onDone();
  };

  return { begin: () => after(PAUSE) };
}
