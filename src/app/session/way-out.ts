import type { Outcome, Problem } from '../../diagnostics/index.ts';
import type { EditInHand } from '../view-model/edit-in-hand.ts';

/** How a person, or the page, turns away from what is being typed. */
export type WayOut =
  | 'escape'
  /** A key of the field that enters it: Enter, Tab, an arrow. */
  | 'enter'
  /** The offer below the field is taken: the line becomes one of the other kind, with the draft in it. */
  | 'offer'
  /** Another cell, a sheet, the overview, a panel, a menu, a dialog: wherever the pointer or the focus went. */
  | 'elsewhere'
  /** The units shown change, in which the draft was meant. */
  | 'units'
  /** The step of undo or redo that was asked for. */
  | 'history'
  /** Saving, printing, searching: what takes the book as it is. */
  | 'file'
  /** The book is left for another one or for the start page. */
  | 'close'
  /** The window loses the keys, and may get them back. */
  | 'window';

const ways: Readonly<Record<WayOut, 'drop' | 'enter' | 'keep'>> = {
  escape: 'drop',
  enter: 'enter',
  offer: 'enter',
  elsewhere: 'enter',
  units: 'enter',
  history: 'enter',
  file: 'enter',
  close: 'enter',
  window: 'keep',
};

/** Whether entering the draft would change anything. */
export function isChanged({ draft, held }: EditInHand): boolean {
  return draft !== held;
}

/** Whether a reason is entered as it stands, which confirms it for the value that is stated now. */
function isConfirmed({ kind }: EditInHand, way: WayOut): boolean {
  return kind === 'reason' && way === 'enter';
}

/**
 * What is in hand after a way out: nothing, or the draft still, with the reason where `enter` refused it. `enter` puts
 * it into the book, and is asked only where it differs from what the place holds, or confirms it.
 */
export function afterWayOut(
  hand: EditInHand,
  way: WayOut,
  enter: (hand: EditInHand) => Outcome<unknown>,
): EditInHand | undefined {
  const does = ways[way];
  if (does === 'keep') return hand;
  if (does === 'drop' || !(isChanged(hand) || way === 'offer' || isConfirmed(hand, way))) return undefined;
  const entered = enter(hand);
  return entered.ok ? undefined : { ...hand, composing: false, remarks: refusalWords(entered.problems) };
}

/** Why a draft stays in hand, and the one way to be rid of it. */
function refusalWords(problems: readonly Problem[]): readonly string[] {
  return [
    ...problems.map(({ message, hints }) => [message, ...hints].join('; ')),
    'Escape leaves it as it was',
  ];
}
