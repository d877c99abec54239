import {
  autocompletion,
  type Completion,
  type CompletionContext,
  type CompletionResult,
  pickedCompletion,
} from '@codemirror/autocomplete';
import type { Extension } from '@codemirror/state';
import type { EditorView } from '@codemirror/view';
import type { Completions } from '../completion/complete.ts';
import { matching } from '../completion/matching.ts';
import { MOST_SUGGESTIONS, type Suggestion } from '../completion/suggestion.ts';

/** What may be written at a place of a text; `asked`: the person has asked for a list. */
export type Completer = (text: string, at: number, asked: boolean) => Completions | undefined;

interface Offered extends Completion {
  readonly suggestion: Suggestion;
}

/** Of how many at a time the list is drawn. */
const DRAWN = 20;

/** The letter typed shows first, the list right after (ms). */
const AFTER_THE_LETTER = 20;

/** The list of completions below the caret. Nothing is chosen until the person chooses. */
export function formulaCompletion(completer: Completer): Extension {
  return autocompletion({
    override: [(context) => offer(context, completer)],
    activateOnTypingDelay: AFTER_THE_LETTER,
    interactionDelay: 0,
    selectOnOpen: false,
    icons: false,
    maxRenderedOptions: DRAWN,
    addToOptions: [{ render: drawValue, position: 90 }],
  });
}

function offer(context: CompletionContext, completer: Completer): CompletionResult | null {
  const { state, pos, explicit } = context;
  const found = completer(state.doc.toString(), pos, explicit);
  if (!found) return null;
  const typed = state.sliceDoc(found.from, pos);
  const options = matching(typed, found.suggestions).slice(0, MOST_SUGGESTIONS);
  if (options.length === 0) return null;
  return {
    from: found.from,
    options: options.map(offered),
    filter: false,
    getMatch: ({ label }) => matchIn(label, typed),
  };
}

/** Where the letters typed stand in a label. */
function matchIn(label: string, typed: string): readonly number[] {
  const from = label.toLowerCase().indexOf(typed.toLowerCase());
  return typed === '' || from < 0 ? [] : [from, from + typed.length];
}

function offered(suggestion: Suggestion): Offered {
  const { text, detail, kind, help } = suggestion;
  return {
    suggestion,
    label: text,
    detail,
    type: kind,
    apply: (view, completion, from, to) => write(view, completion, suggestion, from, to),
    ...(help !== undefined && { info: () => drawHelp(suggestion) }),
  };
}

function write(
  view: EditorView,
  completion: Completion,
  suggestion: Suggestion,
  from: number,
  to: number,
): void {
  const { kind, text, insert = text, back = 0 } = suggestion;
  const { doc } = view.state;
  const opened = kind === 'function' && doc.sliceString(to, to + 1) === '(';
  const closes = kind === 'text' && doc.sliceString(to, to + 1) === '"';
  const written = opened ? text : kind === 'text' ? `${insert}"` : insert;
  const end = closes ? to + 1 : to;
  const caret = opened ? from + text.length + 1 : from + written.length - back;
  view.dispatch({
    changes: { from, to: end, insert: written },
    selection: { anchor: caret },
    annotations: pickedCompletion.of(completion),
    userEvent: 'input.complete',
  });
}

function drawValue(completion: Completion): Node | null {
  const value = (completion as Offered).suggestion.value?.() ?? '';
  const drawn = document.createElement('span');
  drawn.className = 'completion-value';
  drawn.textContent = value;
  return drawn;
}

function drawHelp({ signature = '', help = '' }: Suggestion): Node {
  const drawn = document.createElement('div');
  const call = document.createElement('div');
  call.className = 'completion-signature';
  call.textContent = signature;
  const words = document.createElement('div');
  words.textContent = help;
  drawn.append(call, words);
  return drawn;
}
