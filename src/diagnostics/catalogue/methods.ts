import { entry } from './entry.ts';
import { listed, quoted } from './wording.ts';

/** Problems of lines and columns with several methods, of which a text chooses one. */
export const methods = {
  'methods-by-unknown': entry<{ by: string; near: string[] }>({
    title: 'Methods chosen by something that is not there',
    explain:
      'A line with methods names the choice, the text line or the text column that chooses between them.',
    words: ({ by, near }) => ({
      message: `${quoted(by)}, which is to choose the method, is no line and no column of this table`,
      ...(near.length > 0 && { hint: `did you mean ${listed(near.map(quoted))}?` }),
    }),
  }),
  'methods-by-column': entry<{ by: string }>({
    title: 'Methods chosen by a column of another table',
    explain:
      'A column chooses row by row, so it can choose only between the methods of a column of its own table, and is written there with its name alone.',
    words: ({ by }) => ({
      message: `${by}, which is to choose the method, is a column and has no one value here`,
      hint: 'choose by a line, or by a column of the same table under its name alone',
    }),
  }),
  'methods-by-not-text': entry<{ by: string; is: string }>({
    title: 'Methods chosen by something that is not a text',
    explain: 'Methods are chosen by the value of a choice or by another text.',
    words: ({ by, is }) => ({
      message: `${by}, which is to choose the method, is ${is} and not a text`,
      hint: 'choose by a choice, or by a text',
    }),
  }),
  'method-option-missing': entry<{ option: string; by: string }>({
    title: 'An option without a method',
    explain: 'What chooses has a value that no method of the line is for, so the line has no value.',
    words: ({ option, by }) => ({
      message: `no method is for ${quoted(option)}, which ${by} is`,
      hint: `add a method for ${quoted(option)}, or choose another`,
    }),
  }),
  'method-options-left': entry<{ by: string; options: string[] }>({
    title: 'Options that no method is for',
    explain:
      'The line has no method for some options of what chooses. It has its value as long as none of them is chosen.',
    severity: 'warning',
    words: ({ by, options }) => ({
      message: `no method is for ${listed(options.slice(0, 8).map(quoted))}${options.length > 8 ? ' and others' : ''}, which ${by} could be`,
    }),
  }),
  'method-option-unknown': entry<{ option: string; by: string; near: string[] }>({
    title: 'A method for an option that is not there',
    explain:
      'A method is for an option that what chooses does not have, while the method for all others is in force. A misspelt option would be computed by that one unseen, so the line has no value.',
    words: ({ option, by, near }) => ({
      message: `a method is for ${quoted(option)}, which is no option of ${by}`,
      ...(near.length > 0 && { hint: `did you mean ${listed(near.map(quoted))}?` }),
    }),
  }),
  'method-option-unused': entry<{ option: string; by: string; near: string[] }>({
    title: 'A method that is never chosen',
    explain: 'A method is for an option that what chooses does not have; another method is in force.',
    severity: 'warning',
    words: ({ option, by, near }) => ({
      message: `a method is for ${quoted(option)}, which is no option of ${by}`,
      ...(near.length > 0 && { hint: `did you mean ${listed(near.map(quoted))}?` }),
    }),
  }),
  'method-for-nothing': entry<{ name: string }>({
    title: 'A method for no option',
    explain: 'A method is for one option or more of what chooses, or for all that no other method is for.',
    words: ({ name }) => ({
      message: `a method of ${name} has to be for an option`,
      hint: 'choose one, or all others',
    }),
  }),
  'method-option-taken': entry<{ name: string; option: string }>({
    title: 'An option with two methods',
    explain: 'What chooses has one value, and one method of a line is in force for it.',
    words: ({ name, option }) => ({
      message: `${name} has a method for ${quoted(option)} already`,
      hint: 'change that one, or take the option from it first',
    }),
  }),
  'method-others-taken': entry<{ name: string }>({
    title: 'Two methods for all others',
    explain: 'One method of a line can be for all options that no other method is for.',
    words: ({ name }) => ({
      message: `${name} has a method for all others already`,
      hint: 'change that one, or give it options first',
    }),
  }),
  'method-others-last': entry<{ name: string }>({
    title: 'The method for all others before another',
    explain: 'The method for all options that no other method is for is the last one.',
    words: ({ name }) => ({ message: `the method of ${name} for all others stays the last` }),
  }),
  'method-alone': entry<{ name: string }>({
    title: 'The only method of a line',
    explain: 'A line is computed by something: its last method is not removed.',
    words: ({ name }) => ({
      message: `this is the only method of ${name}`,
      hint: 'keep it as the one formula of the line, or add another first',
    }),
  }),
  'methods-by-unfit': entry<{ name: string; by: string }>({
    title: 'Something that cannot choose the methods of a line',
    explain:
      'Methods are chosen by a choice or another text that does not follow from the line itself, those of a column also by a text column of its table.',
    words: ({ name, by }) => ({
      message: `${quoted(by)} cannot choose between methods of ${name}`,
      hint: 'take a choice, a text line, or a text column of the same table',
    }),
  }),
  'option-blank': entry<{ by: string }>({
    title: 'A new option without a value',
    explain: 'Formulas and methods know an option of a choice by its value.',
    words: ({ by }) => ({ message: `the new option of ${by} needs a value` }),
  }),
  'option-of-none': entry<{ by: string; option: string }>({
    title: 'A new option that nothing gets',
    explain: 'What chooses has a list of its options, and a value that is not in it is never chosen.',
    words: ({ by, option }) => ({
      message: `${quoted(option)} is no option of ${by}`,
      hint: 'add it to the list',
    }),
  }),
  'option-there': entry<{ by: string; option: string }>({
    title: 'A new option that is there already',
    explain:
      'Options are told apart by their values, in which capital letters and blanks at the ends do not count.',
    words: ({ by, option }) => ({ message: `${by} has the option ${quoted(option)} already` }),
  }),
  'option-of-column': entry<{ by: string; from: string }>({
    title: 'A new option of a choice from a column',
    explain:
      'A choice that takes its options from a column of a table gets another one as a row of the table.',
    words: ({ by, from }) => ({
      message: `${by} has its options from ${from}`,
      hint: `add a row there, then a method for it`,
    }),
  }),
  'methods-differ': entry<{ is: string; other: string; wanted: string }>({
    title: 'Methods that give different kinds of values',
    explain: 'All methods of a line give its dimension: whatever is chosen, the line means the same.',
    words: ({ is, other, wanted }) => ({
      message: `it gives ${is}, where the method ${other} gives ${wanted}`,
      hint: 'have all methods give the same, or fill in the unit',
    }),
  }),
  'option-compared': entry<{ option: string; by: string }>({
    title: 'An option that a formula compares with',
    explain:
      'A formula looks for this option by its text. Written otherwise, or taken out of the list, the formula would find it in none and take another branch without a word.',
    words: ({ option, by }) => ({
      message: `the formula of ${by} compares with ${quoted(option)}, which the list would no longer have`,
      hint: 'change its words after the equals sign instead, or the formula first',
    }),
  }),
  'method-undecided': entry<{ name: string; by: string }>({
    title: 'A formula of which it is open whose it is',
    explain:
      'The line has several methods, and here none of them is in force: what chooses has no value, or another one from row to row.',
    words: ({ name, by }) => ({
      message: `${name} has several methods, and ${by} chooses none of them here`,
      hint: 'edit the formula where it is in force, or in the list of methods',
    }),
  }),
  'method-fails': entry<{ method: string; id: string; message: string }>({
    title: 'A method with a problem',
    explain:
      'One method of the line cannot be computed; the method is named. If another is in force, the line has its value.',
    words: ({ method, message }) => ({ message: `the method ${method}: ${message}` }),
  }),
};
