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

/** The last runs of each open book by their templates, which outlive the page that shows them. */
const runs = new WeakMap<Session, ReadonlyMap<string, CaseRun>>();
const workers = new WeakMap<Session, Map<string, Worker>>();
const listeners = new WeakMap<Session, ReadonlySet<() => void>>();

/** Has whoever shows the runs of a book hear of each case that is done; gives what ends that. */
export function followCaseRuns(session: Session, listener: () => void): () => void {
  listeners.set(session, new Set(listeners.get(session)).add(listener));
  return () => {
    listeners.set(session, new Set([...(listeners.get(session) ?? [])].filter((one) => one !== listener)));
  };
}

/** The last run of the cases of a template. */
export function caseRunOf(session: Session, template: string): CaseRun | undefined {
  return caseRunsOf(session).get(template);
}

/** The last run of each template whose cases were run. */
export function caseRunsOf(session: Session): ReadonlyMap<string, CaseRun> {
  return runs.get(session) ?? new Map();
}

/** Whether the book computes otherwise now than when its cases were run. */
export function isRunStale({ formulas }: CaseRun, book: Book): boolean {
  return formulas !== formulasSaid(book);
}

/** Begins to run cases in a worker, in place of those of the template that run. */
export function runCases(session: Session, template: Book, id: string, cases: readonly Case[]): void {
  stopCases(session, id);
  const project = session.notebook.book;
  const worker = new Worker(new URL('../../workers/cases.ts', import.meta.url), { type: 'module' });
  workers.set(session, new Map(workers.get(session)).set(id, worker));
  const end = (change: Partial<CaseRun>): void => {
    stopCases(session, id);
    changeRun(session, id, change);
  };
  const results: ProjectCase[] = [];
  const run = { count: cases.length, results, isRunning: true, formulas: formulasSaid(project) };
  runs.set(session, new Map(runs.get(session)).set(id, run));
  worker.addEventListener('message', ({ data }: MessageEvent<CasesReply>) => {
    if ('failed' in data) {
      end({ failed: data.failed });
      return;
    }
    results.push(data.result);
    if (results.length === cases.length) end({});
    else tell(session);
  });
  worker.addEventListener('error', ({ message }) => end({ failed: message }));
  worker.postMessage({ template, id, cases, project } satisfies CasesRequest);
  tell(session);
}

/** Ends the run of a template's cases where it is, with its worker. */
export function stopCases(session: Session, template: string): void {
  const own = workers.get(session);
  own?.get(template)?.terminate();
  own?.delete(template);
  changeRun(session, template, { isRunning: false });
}

/** Ends all runs of a book that is left. */
export function stopAllCases(session: Session): void {
  for (const template of caseRunsOf(session).keys()) stopCases(session, template);
}

function changeRun(session: Session, template: string, change: Partial<CaseRun>): void {
  const run = caseRunOf(session, template);
  if (!run) return;
  runs.set(session, new Map(runs.get(session)).set(template, { ...run, ...change }));
  tell(session);
}

function tell(session: Session): void {
  for (const listener of listeners.get(session) ?? []) listener();
}
