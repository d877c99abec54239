import { projectRun } from '../review/index.ts';
import type { CasesReply, CasesRequest } from './messages.ts';

/** Runs cases of a template on the formulas of a book off the main thread. */
self.addEventListener('message', (event: MessageEvent<CasesRequest>) => {
  const { template, id, cases, project } = event.data;
  const answer = (reply: CasesReply): void => self.postMessage(reply);
  try {
    const { run } = projectRun(template, id, project);
    for (const example of cases) answer({ result: run(example) });
  } catch (error) {
    answer({ failed: String(error) });
  }
});
