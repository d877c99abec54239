import { html, type TemplateResult } from 'lit';
import type { Session } from '../session/session.ts';
import type { CellEdit, Commit } from './cell-edit.ts';
import './plain-cell-editor.ts';

/** The editor of a cell, in place. Prose has a field of several lines; everything else the cell editor. */
export function cellEditor(
  session: Session,
  edit: CellEdit,
  commit: (done: Commit) => void,
  cancel: () => void,
): TemplateResult {
  return html`<quay-plain-cell-editor
    .session=${session}
    .kind=${edit.kind}
    .value=${edit.value}
    .place=${edit.place}
    .seed=${edit.seed}
    @commit=${(event: CustomEvent<Commit>) => commit(event.detail)}
    @cancel=${cancel}
  ></quay-plain-cell-editor>`;
}
