import type { Session } from '../session/session.ts';
import { placeOfId } from '../view-model/places.ts';

/** Leads to a line, table or column by its full id; what is gone leads nowhere. */
export function goToId(session: Session, id: string): void {
  const place = placeOfId(session.notebook, id);
  if (place) session.jumpTo(place);
}
