import { html, type TemplateResult } from 'lit';
import type { Commit, Typed } from '../../editor/cell-edit.ts';
import type { Session } from '../../session/session.ts';
import type { EditInHand } from '../../view-model/edit-in-hand.ts';
import { samePlace } from '../../view-model/place.ts';
import type { SheetHost } from '../sheet-host.ts';
import '../../editor/quay-cell-editor.ts';
import './quay-prose-editor.ts';

/**
 * The editor of a cell, in place: prose has a field of several lines, everything else the cell editor. It shows what is
 * in hand and tells the session of each change; what becomes of it is not for the editor to say.
 */
export function cellEditor(session: Session, host: SheetHost, began: EditInHand): TemplateResult {
  // An editor that is drawn anew shows what was typed since.
  const hand = session.hand && samePlace(session.hand.place, began.place) ? session.hand : began;
  if (hand.composing === true) return html`<span class="composing">${hand.draft}</span>`;
  const typed = ({ detail }: CustomEvent<Typed>): void => session.changeDraft(detail.text, detail.selected);
  const commit = ({ detail }: CustomEvent<Commit>): void => host.commit(detail);
  const leave = (): void => void session.endEdit('elsewhere');
  if (hand.kind === 'prose')
    return html`<quay-prose-editor
      .label=${'text'}
      .text=${hand.draft}
      @typed=${typed}
      @commit=${commit}
      @cancel=${host.cancel}
      @leave=${leave}
    ></quay-prose-editor>`;
  return html`<quay-cell-editor
    .session=${session}
    .hand=${hand}
    @typed=${typed}
    @commit=${commit}
    @cancel=${host.cancel}
    @leave=${leave}
  ></quay-cell-editor>`;
}
