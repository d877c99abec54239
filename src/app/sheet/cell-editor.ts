import { html, type TemplateResult } from 'lit';
import type { CellPlace } from '../session/place.ts';
import type { Session } from '../session/session.ts';
import './plain-cell-editor.ts';

/** What a cell holds, for its editor. */
export type CellKind = 'formula' | 'entry' | 'unit' | 'name' | 'text' | 'choice' | 'prose';

/** A cell being edited: the text it held, and the character that began the edit by typing over. */
export interface CellEdit {
  readonly place: CellPlace;
  readonly kind: CellKind;
  readonly value: string;
  readonly seed?: string;
}

/** Where a person goes on after committing. */
export type CommitMove = 'down' | 'up' | 'right' | 'left' | 'stay';

/** What an editor says when the person is done. */
export interface Commit {
  readonly value: string;
  readonly move: CommitMove;
}

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
