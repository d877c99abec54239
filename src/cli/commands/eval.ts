import { renderProblem } from '../../diagnostics/index.ts';
import type { Type } from '../../language/index.ts';
import { evaluateFormula, spelledName, spellingProblems, type Value } from '../../notebook/index.ts';
import { describeDimension, writeQuantity } from '../../units/index.ts';
import { AGREES, type Command, REFUSES } from '../command.ts';
import { numberIn } from '../number-in.ts';
import { readOptions, splitAssignment } from '../options.ts';
import { Refused, refusedBy } from '../refused.ts';

const kinds = { given: 'many', unit: 'once', json: 'alone' } as const;

/** `quaybook eval`: one formula at the prompt. */
export const evaluate: Command = {
  name: 'eval',
  usage: 'eval FORMULA [--given NAME=ENTRY]... [--unit UNIT] [--json]',
  help: 'computes one formula over values given beside it',
  run: (args, output) => {
    const options = readOptions('eval', args, kinds);
    const [formula, ...more] = options.positionals;
    if (formula === undefined || more.length > 0)
      throw new Refused('eval takes one FORMULA, in quotation marks');
    const given = readGivens(options.many('given'));
    const { value, type, problems } = evaluateFormula(formula, given, options.once('unit'));
    if (options.alone('json')) {
      const printed = value ? printValue(value) : { value: null, unit: null, text: null };
      output.print(JSON.stringify({ ...printed, dimension: dimensionOf(type), problems }, null, 2));
    } else if (value) output.print(printValue(value).text);
    for (const found of problems) output.complain(renderProblem(found));
    return value ? AGREES : REFUSES;
  },
};

function readGivens(texts: readonly string[]): Readonly<Record<string, string>> {
  const given = new Map<string, string>();
  for (const text of texts) {
    const [written, entry] = splitAssignment('given', text);
    const name = spelledName(written);
    const wrong = spellingProblems(name);
    if (wrong.length > 0) throw refusedBy(wrong, '--given');
    if (given.has(name)) throw new Refused(`--given ${name} stands twice`);
    given.set(name, entry);
  }
  return Object.fromEntries(given);
}

function printValue(value: Value) {
  switch (value.kind) {
    case 'text':
      return { value: value.text, unit: '', text: value.text };
    case 'truth':
      return { value: value.truth, unit: '', text: value.truth ? 'TRUE' : 'FALSE' };
    case 'number': {
      const text = writeQuantity(value.si, value.unit);
      const number = value.unit.point === 'date' ? text : numberIn(value.si, value.unit);
      return { value: number, unit: value.unit.text === '-' ? '' : value.unit.text, text };
    }
  }
}

function dimensionOf(type: Type): string | null {
  switch (type.kind) {
    case 'number':
      return type.dimension.key === '' ? '' : describeDimension(type.dimension);
    case 'point':
      return type.of;
    case 'unknown':
      return null;
    default:
      return type.kind;
  }
}
