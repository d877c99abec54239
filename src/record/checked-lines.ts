import type { Notebook } from '../notebook/index.ts';
import {
  type Change,
  type Checked,
  findSubject,
  type Orphan,
  type Said,
  type SignatureStanding,
  stateInWords,
} from '../review/index.ts';
import { withTrueMinus, writeQuantity } from '../units/index.ts';
import { differenceShare } from './stated-lines.ts';

/**
 * What is said of one result or entry that was checked, and of what is not as it was, in a line:
 * `pile.Q  by hand 120 kN (KL, 2026-03-01) beside 118.3 kN: differs by +1.7 kN (+1.4 %)`.
 */
export function checkedLine(notebook: Notebook, one: Checked): string {
  const { item, row } = one;
  const name = row === undefined ? item.id : `${item.id}, row ${row + 1}`;
  return `${name}  ${checkedWords(notebook, one)}`;
}

/** The same beside its line, which has the name. */
export function checkedWords(notebook: Notebook, one: Checked): string {
  const { state, hand, seen, verdict, changes } = one;
  const said = hand ?? seen;
  const by = said === undefined ? '' : ` (${saidWords(said)})`;
  const since = changes.map((change) => changeWords(notebook, change, ''));
  const what = hand ? `by hand ${hand.entry}${by}` : seen ? `seen at its source${by}` : 'not checked';
  const beside = verdict?.kind === 'agrees' || verdict?.kind === 'differs' ? besideWords(verdict) : '';
  const why = verdict?.kind === 'unread' ? `: ${verdict.problem.message}` : '';
  const stale = state === 'stale' ? `; stale since ${since.join('; ')}` : '';
  return `${what}${beside}${why}${stale}`;
}

type Compared = Extract<NonNullable<Checked['verdict']>, { readonly kind: 'agrees' | 'differs' }>;

function besideWords({ kind, result, difference }: Compared): string {
  if (result.kind !== 'number' || !difference) return `: ${kind}`;
  const beside = ` beside ${withTrueMinus(writeQuantity(result.si, result.unit))}: ${kind}`;
  if (difference.si === 0) return beside;
  const sign = difference.si > 0 ? '+' : '';
  const share = differenceShare(difference.si, { status: 'ok', value: result });
  return `${beside}${kind === 'differs' ? ' by' : ','} ${sign}${withTrueMinus(writeQuantity(difference.si, difference.unit))}${share}`;
}

/** Who said it, and when: `KL, 2026-03-01`. */
export function saidWords({ by, date }: Said): string {
  return date === undefined ? by : `${by}, ${date}`;
}

/** What was said of a line or cell that the book has no more. */
export function goneWords({ hand, seen }: Orphan): string {
  const said = hand ?? seen;
  const what = hand ? `by hand ${hand.entry}` : 'seen at its source';
  return `${said?.called ?? 'a line'}: ${what}${said ? ` (${saidWords(said)})` : ''}`;
}

/** Changes one by one, up to so many, and how many more there are. */
export function changesInShort(
  notebook: Notebook,
  changes: readonly Change[],
  most: number,
  sheet = '',
): readonly string[] {
  const told = changes.slice(0, most).map((change) => changeWords(notebook, change, sheet));
  return changes.length > told.length ? [...told, `and ${changes.length - told.length} more`] : told;
}

/** Why a signature does not hold any more: who withdrew it, or what has changed since. */
export function sinceSignature(
  notebook: Notebook,
  { signature, changes }: SignatureStanding,
  most: number,
): readonly string[] {
  if (signature.withdrawn) return [`withdrawn by ${saidWords(signature.withdrawn)}`];
  if (!changes) return ['what has changed cannot be told: how the book stood is not kept'];
  if (changes.length === 0) return ['words only: nothing that is entered or computed'];
  return changesInShort(notebook, changes, most);
}

/** One change since something was checked: `A 6 m² → 7 m²`. */
function changeWords(notebook: Notebook, change: Change, sheet: string): string {
  const was = inWords(notebook, change.was);
  const is = inWords(notebook, change.is);
  if (change.item === '') {
    return change.was === undefined && change.is === undefined
      ? 'what it was compared on is not known'
      : `units of the book: ${was} → ${is}`;
  }
  return `${nameOf(notebook, change, sheet)}: ${was} → ${is}`;
}

function inWords(notebook: Notebook, state: string | undefined): string {
  if (state === undefined) return 'not there';
  const words = stateInWords(state, notebook);
  return words === '' ? 'blank' : words.length > 90 ? `${words.slice(0, 87)}…` : words;
}

function nameOf({ model }: Notebook, { item: id, row }: Change, sheet: string): string {
  const found = findSubject(model, { item: id });
  if (!found) {
    const table = [...model.tables.values()].find(({ part }) => part.id === id);
    return table ? `rows of ${table.part.title ?? table.part.name}` : 'a line that is gone';
  }
  const { item } = found;
  const name = item.sheet === sheet ? item.id.slice(item.sheet.length + 1) : item.id;
  if (row === undefined) return name;
  const at = findSubject(model, { item: id, row })?.row;
  return at === undefined ? `${name}, a row that is gone` : `${name}, row ${at + 1}`;
}
