import type { Page } from 'playwright-core';

/** One keystroke, in milliseconds from the key going down. */
export interface Keystroke {
  /** To the end of the work on the main thread that the key sets off before anything else may run. */
  readonly work: number;
  /** To the end of the next frame. */
  readonly frame: number;
}

interface Recorder {
  now: { start: number; work: number; frame: number } | undefined;
}

/** What browsers have and the compiler's library does not know yet. */
interface Scheduling {
  readonly scheduler: {
    postTask(task: () => void, options: { readonly priority: 'user-blocking' }): Promise<void>;
  };
}

/**
 * Has a page time its keystrokes. The clock starts at the event's own time stamp. Work ends when a task comes up
 * that the first listener of `keydown`, and again of `beforeinput` and `input`, posts at the highest priority, or the
 * next frame begins if the browser puts that first: either comes only when handlers and all their microtasks are done.
 * The frame ends with such a task posted from its animation frame, which comes up when styles, layout and painting are
 * done, before timers and other events.
 */
export async function recordKeystrokes(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const recorder: Recorder = { now: undefined };
    Object.assign(globalThis, { keystrokeRecorder: recorder });
    const { scheduler } = globalThis as unknown as Scheduling;
    const afterThis = (then: () => void) => void scheduler.postTask(then, { priority: 'user-blocking' });
    const follow = () => {
      const { now } = recorder;
      if (!now) return;
      let working = true;
      const worked = () => {
        if (working) now.work = performance.now() - now.start;
        working = false;
      };
      afterThis(worked);
      requestAnimationFrame(() => {
        worked();
        afterThis(() => {
          now.frame = performance.now() - now.start;
        });
      });
    };
    addEventListener(
      'keydown',
      (event) => {
        recorder.now = { start: event.timeStamp, work: 0, frame: 0 };
        follow();
      },
      true,
    );
    addEventListener('beforeinput', follow, true);
    addEventListener('input', follow, true);
  });
}

/** Presses a key and gives its times, when the page has come to rest again. */
export async function press(page: Page, key: string): Promise<Keystroke> {
  await page.keyboard.press(key);
  const times = await page.evaluate(async () => {
    const { keystrokeRecorder } = globalThis as unknown as { keystrokeRecorder: Recorder };
    const frame = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
    await frame();
    await frame();
    return keystrokeRecorder.now;
  });
  if (!times || times.work <= 0 || times.frame <= 0) throw new Error(`the key ${key} was not timed`);
  // The pause of a quick typist, in which the page does what it has put off.
  await page.waitForTimeout(60);
  return times;
}
