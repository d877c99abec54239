import { type Choice, optionWords } from '../../document/index.ts';
import { type CheckedFormula, changeParts, type NameSyntax, type Syntax } from '../../language/index.ts';
import { type FormulaItem, linkSource, type Notebook } from '../../notebook/index.ts';

const made = new WeakMap<CheckedFormula, { readonly model: unknown; readonly words: CheckedFormula }>();

/**
 * The condition under which a check applies, as people read it: a choice is compared with the words of its option, which are
 * what stands on the choice, in place of what formulas call it. Undefined where there is no condition.
 */
export function appliesInWords({ model }: Notebook, item: FormulaItem): CheckedFormula | undefined {
  const { applies, sheet } = item;
  if (!applies?.whole) return applies;
  const known = made.get(applies);
  // The options are another part of the book: they may change while the condition stays.
  if (known?.model === model) return known.words;
  const choiceOf = ({ name }: NameSyntax): Choice | undefined => {
    const named = model.items.get(`${sheet}.${name}`) ?? model.items.get(name);
    const found = (named && linkSource(named, model.items)) ?? named;
    return found?.kind === 'input' && found.row.kind === 'choice' ? found.row : undefined;
  };
  const inWords = (node: Syntax): Syntax => {
    if (node.kind !== 'comparison') return changeParts(node, inWords);
    const { left, right } = node;
    const [name, text] = left.kind === 'text' ? [right, left] : [left, right];
    const options = name.kind === 'name' && text.kind === 'text' ? choiceOf(name)?.options : undefined;
    if (!options || text.kind !== 'text') return changeParts(node, inWords);
    const words = { ...text, value: optionWords(options, text.value) };
    return left.kind === 'text' ? { ...node, left: words } : { ...node, right: words };
  };
  const words = { ...applies, syntax: inWords(applies.syntax) };
  made.set(applies, { model, words });
  return words;
}
