import type { Cause, Causes, Subject } from '../../review/index.ts';
import { fieldWords } from './field-words.ts';

/** The most causes that are named. */
const NAMED = 5;

/** `; from basis.v (entry), takeoff.V (3 cells)`: what a person changed that something rests on. */
export function causeWords({ list, more }: Causes, subject: Subject): string {
  if (list.length === 0) return '; no line says from what';
  const named = list.slice(0, NAMED).map((cause) => oneCause(cause, subject));
  const left = list.length - named.length;
  const rest = more ? ['and others'] : left > 0 ? [`and ${left} more`] : [];
  return `; from ${[...named, ...rest].join(', ')}`;
}

function oneCause({ subject, by, cells, rowName }: Cause, of: Subject): string {
  const what = by.map((field) => {
    if (field !== 'cells') return fieldWords(field);
    if (rowName !== undefined) return `cell “${rowName}”`;
    return cells === 1 ? 'a cell' : `${cells} cells`;
  });
  const id = subject?.after?.id ?? subject?.before?.id;
  if (id === undefined) return what.join(' and ');
  const isItself = id === of.after?.id && subject?.kind === of.kind;
  return isItself ? `its own ${what.join(' and ')}` : `${id} (${what.join(', ')})`;
}
