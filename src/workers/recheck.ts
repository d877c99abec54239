import { openNotebook, recheckProgram } from '../notebook/index.ts';
import { recheck } from '../recheck/index.ts';
import type { RecheckReply, RecheckRequest } from './messages.ts';

/** Rechecks a whole book off the main thread. */
self.addEventListener('message', (event: MessageEvent<RecheckRequest>) => {
  const { turn, book } = event.data;
  const answer = (reply: RecheckReply): void => self.postMessage(reply);
  const { program, values } = recheckProgram(openNotebook(book));
  recheck(program, values, (progress) => answer({ turn, progress })).then(
    (report) => answer({ turn, report }),
    (error: unknown) => answer({ turn, failed: String(error) }),
  );
});
