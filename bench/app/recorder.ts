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

interface Recorder {
  now: { mark: string; start: number; marked: number; frame: number } | undefined;
}

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
    let asked: Recorder['now'];
    const follow = () => {
      const { now } = recorder;
      if (!now) return;
      performance.mark(now.mark);
      now.marked = performance.now() - now.start;
      // Asking for a frame takes time of its own: once is enough for all events of a key.
      if (asked === now) return;
      asked = now;
      requestAnimationFrame(() => {
        asked = undefined;
        void scheduler.postTask(
          () => {
            now.frame = performance.now() - now.start;
          },
          { priority: 'user-blocking' },
        );
      });
    };
    addEventListener(
      'keydown',
      (event) => {
        const mark = recorder.now?.mark ?? '';
        recorder.now = { mark, start: event.timeStamp, marked: 0, frame: 0 };
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
    keystrokeRecorder.now = { mark: name, start: 0, marked: 0, frame: 0 };
  }, mark);
  await page.keyboard.press(key);
  const times = await page.evaluate(async () => {
    const { keystrokeRecorder } = globalThis as unknown as { keystrokeRecorder: Recorder };
    const frame = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
    await frame();
    await frame();
    const { now } = keystrokeRecorder;
    keystrokeRecorder.now = undefined;
    return now;
  });
  if (!times || times.marked <= 0 || times.frame <= 0) throw new Error(`the key ${key} was not timed`);
  // The pause of a quick typist, in which the page does what it has put off.
  await page.waitForTimeout(60);
  return times;
}
