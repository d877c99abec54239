import { html, type TemplateResult } from 'lit';
import type { Session } from '../../session/session.ts';
import type { CellEdit, Commit } from './cell-edit.ts';
import '../../editor/quay-cell-editor.ts';
import './quay-prose-editor.ts';

/** The editor of a cell, in place: prose has a field of several lines, everything else the cell editor. */
export function cellEditor(
  session: Session,
  edit: CellEdit,
  commit: (done: Commit) => void,
  cancel: () => void,
): TemplateResult {
  const done = (event: CustomEvent<Commit>): void => {
    event.stopPropagation();
    commit(event.detail);
  };
  if (edit.kind === 'prose')
    return html`<quay-prose-editor
      .label=${'text'}
      .value=${edit.value}
      .seed=${edit.seed}
      @commit=${done}
      @cancel=${cancel}
    ></quay-prose-editor>`;
  return html`<quay-cell-editor
    .session=${session}
    .kind=${edit.kind}
    .value=${edit.value}
    .place=${edit.place}
    .seed=${edit.seed}
    @commit=${done}
    @cancel=${cancel}
  ></quay-cell-editor>`;
}
