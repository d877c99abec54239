import type { Page } from 'playwright-core';

/** One keystroke as the page saw it, times in milliseconds. */
export interface Keystroke {
  /** The name of its marks in the trace. */
  readonly mark: string;
  /** From the key going down to the last mark: the last of its events that reached a listener. */
  readonly marked: number;
  /** From the key going down to the end of the next frame. */
  readonly frame: number;
}

/** Times not known yet are undefined: a mark or a frame may come in the very moment of a coarse event stamp. */
interface Timing {
  readonly mark: string;
  readonly start: number;
  readonly marked?: number;
  readonly frame?: number;
}

interface Recorder {
  now: Timing | undefined;
}

/** So long a frame may take (ms): on a busy machine with a large table it takes seconds. */
const LONGEST_FRAME = 60_000;

/** What browsers have and the compiler's library does not know yet. */
interface Scheduling {
  readonly scheduler: {
    postTask(task: () => void, options: { readonly priority: 'user-blocking' }): Promise<void>;
  };
}

/**
 * Has a page time its keystrokes. The clock starts at the event's own time stamp. Each of a key's events leaves a mark
 * in the trace, in the task that handles it. The frame ends with a task of the highest priority posted from its
 * animation frame, which comes up when styles, layout and painting are done, before timers and other events.
 */
export async function recordKeystrokes(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const recorder: Recorder = { now: undefined };
    Object.assign(globalThis, { keystrokeRecorder: recorder });
    const { scheduler } = globalThis as unknown as Scheduling;
    // A key with a modifier comes as two keys, of which the last is timed.
    let turn = 0;
    let asked = 0;
    const follow = () => {
      const { now } = recorder;
      if (!now) return;
      performance.mark(now.mark);
      // The stamp of an event is rounded, and may lie a little after the moment it is handled.
      const since = () => Math.max(0, performance.now() - now.start);
      recorder.now = { ...now, marked: since() };
      // Asking for a frame takes time of its own: once is enough for all events of a key.
      if (asked === turn) return;
      asked = turn;
      requestAnimationFrame(() => {
        void scheduler.postTask(
          () => {
            if (recorder.now?.start === now.start) recorder.now = { ...recorder.now, frame: since() };
          },
          { priority: 'user-blocking' },
        );
      });
    };
    addEventListener(
      'keydown',
      (event) => {
        if (!recorder.now) return;
        turn += 1;
        recorder.now = { mark: recorder.now.mark, start: event.timeStamp };
        follow();
      },
      true,
    );
    addEventListener('beforeinput', follow, true);
    addEventListener('input', follow, true);
  });
}

let pressed = 0;

/** Presses a key and gives its times, when the page has come to rest again. */
export async function press(page: Page, key: string): Promise<Keystroke> {
  pressed += 1;
  const mark = `keystroke ${pressed}`;
  await page.evaluate((name) => {
    const { keystrokeRecorder } = globalThis as unknown as { keystrokeRecorder: Recorder };
    keystrokeRecorder.now = { mark: name, start: 0 };
  }, mark);
  await page.keyboard.press(key);
  const timed = page.waitForFunction(
    () => {
      const { now } = (globalThis as unknown as { keystrokeRecorder: Recorder }).keystrokeRecorder;
      return now?.marked !== undefined && now.frame !== undefined;
    },
    undefined,
    { timeout: LONGEST_FRAME },
  );
  await timed.catch(() => {
    throw new Error(`the key ${key} was not timed: it reached no listener, or no frame came of it`);
  });
  const times = await page.evaluate(async () => {
    const { keystrokeRecorder } = globalThis as unknown as { keystrokeRecorder: Recorder };
    const frame = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
    await frame();
    const { now } = keystrokeRecorder;
    keystrokeRecorder.now = undefined;
    return now;
  });
  if (times?.marked === undefined || times.frame === undefined)
    throw new Error(`the key ${key} was not timed`);
  // The pause of a quick typist, in which the page does what it has put off.
  await page.waitForTimeout(60);
  return { mark, marked: times.marked, frame: times.frame };
}
