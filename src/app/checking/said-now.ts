import type { Said } from '../../review/index.ts';
import type { Session } from '../session/session.ts';
import { day } from '../view-model/local-time.ts';

/** Who says something now: the initials of who checks, and the day. */
export function saidNow({ checker }: Session): Required<Said> {
  return { by: checker, date: day(Date.now()) };
}
