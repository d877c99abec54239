import type { Option } from '../../../document/index.ts';
import type { Syntax } from '../../../language/index.ts';
import { type Item, type Notebook, namesOf, optionsOf, resolveName } from '../../../notebook/index.ts';
import { labelOf } from '../../../record/index.ts';

/** A list of options that can get another one: that of a choice, or of a text column. */
export interface OptionList {
  readonly id: string;
  readonly label: string;
  /** Whether it is that of a choice, whose options may have words. */
  readonly isChoice: boolean;
  readonly options: readonly Option[];
}

/** What a text may be: the lists it is taken from, and the texts that are written in formulas or in no such list. */
export interface TextSources {
  readonly lists: readonly OptionList[];
  readonly texts: readonly Option[];
}

/**
 * What the text of a line or column may be: of a computed one what its formula passes on as it is, through other lines to
 * the choices where it is chosen. Nothing of what a formula makes a new text of.
 */
export function textSources(notebook: Notebook, item: Item): TextSources {
  const lists: OptionList[] = [];
  const texts: Option[] = [];
  const seen = new Set<string>();
  const visit = (one: Item | undefined): void => {
    if (!one || seen.has(one.id)) return;
    seen.add(one.id);
    if ('checked' in one) {
      const formulas = one.methods?.list.map(({ checked }) => checked.syntax) ?? [one.checked.syntax];
      for (const syntax of formulas) follow(one, syntax);
      return;
    }
    const options = listOf(one);
    const label = labelOf(one);
    if (options) lists.push({ id: one.id, label, isChoice: one.kind === 'input', options });
    else if (one.kind === 'input' && one.row.kind === 'choice') {
      const all = new Set(optionsOf(one.row, one.sheet, namesOf(notebook.book)));
      texts.push(...[...all].map((value) => ({ value })));
    }
  };
  const follow = (one: Item, syntax: Syntax): void => {
    for (const passed of passedOn(syntax)) {
      if (passed.kind === 'text') texts.push({ value: passed.value });
      if (passed.kind !== 'name') continue;
      const table = one.kind === 'formula column' ? one.table : undefined;
      const part = resolveName(passed.name, namesOf(notebook.book), one.sheet, table);
      visit(part && notebook.model.items.get(part.id));
    }
  };
  visit(item);
  return { lists, texts };
}

/** The options that a choice or column lists itself. */
function listOf(item: Item): readonly Option[] | undefined {
  if (item.kind === 'input') return item.row.kind === 'choice' ? item.row.options : undefined;
  if (item.kind !== 'input column') return undefined;
  return item.column.options?.map((value) => ({ value }));
}

/** Which arguments of a function are what it comes to, one of them as it is. */
const passes: Readonly<Record<string, (index: number, count: number) => boolean>> = {
  IF: (index) => index > 0,
  IFS: (index) => index % 2 === 1,
  SWITCH: (index, count) => index > 0 && (index % 2 === 0 || (count % 2 === 0 && index === count - 1)),
  CHOOSE: (index) => index > 0,
  INDEX: (index) => index === 0,
  ABOVE: () => true,
};

/** The parts of a formula of which one is what it comes to. */
function passedOn(node: Syntax): readonly Syntax[] {
  if (node.kind === 'group') return passedOn(node.inner);
  if (node.kind !== 'call') return [node];
  const isPassed = passes[node.name.toUpperCase()];
  return node.args.filter((_, index) => isPassed?.(index, node.args.length)).flatMap(passedOn);
}
