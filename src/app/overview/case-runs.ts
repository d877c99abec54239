import type { Book, Case } from '../../document/index.ts';
import { formulasSaid, type ProjectCase } from '../../review/index.ts';
import type { CasesReply, CasesRequest } from '../../workers/index.ts';
import type { Session } from '../session/session.ts';

/** Cases of a template as they went on the formulas of a book, as far as they have been run. */
export interface CaseRun {
  /** How many are to be run. */
  readonly count: number;
  readonly results: readonly ProjectCase[];
  readonly isRunning: boolean;
  /** Why it ended before all were run. */
  readonly failed?: string;
  /** The formulas they were run on. */
  readonly formulas: string;
}

/** The last run of each open book, which outlives the page that shows it. */
const runs = new WeakMap<Session, CaseRun>();
const workers = new WeakMap<Session, Worker>();

export function caseRunOf(session: Session): CaseRun | undefined {
  return runs.get(session);
}

/** Whether the book computes otherwise now than when its cases were run. */
export function isRunStale({ formulas }: CaseRun, book: Book): boolean {
  return formulas !== formulasSaid(book);
}

/** Begins to run cases in a worker, in place of those that run; `onChange` hears of each that is done. */
export function runCases(
  session: Session,
  template: Book,
  id: string,
  cases: readonly Case[],
  onChange: () => void,
): void {
  stopCases(session);
  const project = session.notebook.book;
  const worker = new Worker(new URL('../../workers/cases.ts', import.meta.url), { type: 'module' });
  workers.set(session, worker);
  const now = (change: Partial<CaseRun>): void => {
    const before = runs.get(session);
    if (before) runs.set(session, { ...before, ...change });
    onChange();
  };
  const end = (change: Partial<CaseRun>): void => {
    worker.terminate();
    workers.delete(session);
    now({ isRunning: false, ...change });
  };
  const results: ProjectCase[] = [];
  runs.set(session, {
    count: cases.length,
    results,
    isRunning: true,
    formulas: formulasSaid(project),
  });
  worker.addEventListener('message', ({ data }: MessageEvent<CasesReply>) => {
    if ('failed' in data) end({ failed: data.failed });
    else {
      results.push(data.result);
      if (results.length === cases.length) end({});
      else now({});
    }
  });
  worker.addEventListener('error', ({ message }) => end({ failed: message }));
  worker.postMessage({ template, id, cases, project } satisfies CasesRequest);
  onChange();
}

/** Ends a run where it is. */
export function stopCases(session: Session): void {
  workers.get(session)?.terminate();
  workers.delete(session);
  const run = runs.get(session);
  if (run) runs.set(session, { ...run, isRunning: false });
}
