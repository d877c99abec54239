import { isSame, placeWords } from './book.ts';
import { differences } from './differences.ts';
import type { Seen } from './seen.ts';
import { draftOf, type EditorAfter, type Outcome, type State } from './state.ts';

/** What was found of a step: how things stand now, or what differs from what should be. */
export type Finding =
  | { readonly kind: 'sound'; readonly state: State }
  | { readonly kind: 'differs'; readonly what: string; readonly lines: readonly string[] };

/** Holds what is seen against every way things may stand. */
export function judge(outcomes: readonly Outcome[], before: State, seen: Seen): Finding {
  if (seen.complaints.length > 0)
    return { kind: 'differs', what: 'the page complains', lines: seen.complaints };
  const tried = outcomes.map((outcome) => ({ outcome, ...compared(outcome, seen) }));
  const sound = tried.find(({ lines }) => lines.length === 0);
  if (!sound) {
    const [first] = tried;
    return { kind: 'differs', what: first?.what ?? 'nothing was expected', lines: first?.lines ?? [] };
  }
  const { outcome } = sound;
  return {
    kind: 'sound',
    state: {
      book: seen.book,
      past: outcome.past,
      future: outcome.future,
      draft: draftOf(outcome, seen.editor, before.draft),
      pastKnown: outcome.pastKnown ?? before.pastKnown,
    },
  };
}

/** The state that the page is in, whatever should have been. */
export function stateOf(seen: Seen): State {
  const { book, editor } = seen;
  const draft = editor && { ...editor, typed: false, over: false };
  return { book, past: [], future: [], draft, pastKnown: false };
}

function compared(
  outcome: Outcome,
  seen: Seen,
): { readonly what: string; readonly lines: readonly string[] } {
  const inBook = differences(outcome.book, seen.book);
  const inHand = editorDifferences(outcome.editor, seen);
  const atPlace =
    outcome.place && !isSame(outcome.place, seen.place)
      ? [
          `chosen is ${seen.place ? placeWords(seen.place) : 'nothing'}, and should be ${placeWords(outcome.place)}`,
        ]
      : [];
  const onSheet =
    outcome.sheet === undefined || outcome.sheet === seen.sheet
      ? []
      : [`the sheet is ${seen.sheet}, and should be ${outcome.sheet}`];
  const { said } = outcome;
  const isSaid = said === undefined || (said.trim() === '' ? seen.said !== '' : seen.said.includes(said));
  const told = isSaid
    ? []
    : [said.trim() === '' ? 'nothing is said' : `“${said}” is not said: “${seen.said}”`];
  const what = [
    inBook.length > 0 ? 'book' : '',
    inHand.length > 0 ? 'hand' : '',
    atPlace.length + onSheet.length > 0 ? 'place' : '',
    told.length > 0 ? 'words' : '',
  ];
  return {
    what: what.filter(Boolean).join(' and '),
    lines: [...inBook, ...inHand, ...atPlace, ...onSheet, ...told],
  };
}

function editorDifferences(wanted: EditorAfter, { editor }: Seen): readonly string[] {
  const has = editor
    ? `“${editor.text}” is being typed at ${placeWords(editor.place)}`
    : 'nothing is being typed';
  switch (wanted.kind) {
    case 'any':
      return [];
    case 'closed':
      return editor ? [`${has}, and nothing should be`] : [];
    case 'opened':
      return isSame(editor?.place, wanted.place) && (wanted.as === undefined || editor?.as === wanted.as)
        ? []
        : [`${has}, and ${placeWords(wanted.place)} should be open${wanted.as ? ` for a ${wanted.as}` : ''}`];
    case 'holds': {
      const same =
        isSame(editor?.place, wanted.place) && (wanted.text === undefined || editor?.text === wanted.text);
      return same ? [] : [`${has}, and “${wanted.text ?? '…'}” should be at ${placeWords(wanted.place)}`];
    }
  }
}
