import type { Browser, Page } from 'playwright-core';

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  /** In microseconds, as is the duration. */
  readonly ts: number;
  readonly dur?: number;
}

const categories = ['toplevel', 'blink.user_timing'];

/**
 * Traces what `act` does on a page. Gives, for the name of a mark, the time in milliseconds from its last occurrence to
 * the end of the task of the main thread it lies in: the end of the handlers and of all their microtasks.
 */
export async function traced<Result>(
  browser: Browser,
  page: Page,
  act: () => Promise<Result>,
): Promise<{ readonly result: Result; readonly restOfTask: (mark: string) => number }> {
  await browser.startTracing(page, { categories });
  const result = await act();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as {
    readonly traceEvents: readonly TraceEvent[];
  };
  const marks = new Map(
    traceEvents.filter(({ name }) => name.startsWith('keystroke ')).map((event) => [event.name, event]),
  );
  const tasks = traceEvents.filter(({ name }) => name === 'ThreadControllerImpl::RunTask');
  const restOfTask = (mark: string): number => {
    const at = marks.get(mark);
    const task = at && tasks.find((one) => one.pid === at.pid && one.tid === at.tid && holds(one, at.ts));
    if (!at || !task) throw new Error(`“${mark}” is not in the trace`);
    return (task.ts + (task.dur ?? 0) - at.ts) / 1000;
  };
  return { result, restOfTask };
}

function holds({ ts, dur = 0 }: TraceEvent, moment: number): boolean {
  return ts <= moment && moment <= ts + dur;
}
