import { entry } from './entry.ts';
import { listed, quoted } from './wording.ts';

/** Problems of the command line: unknown options, files that cannot be read. */
export const command = {
  'option-unknown': entry<{ option: string; nearest: readonly string[] }>({
    title: 'An option the command does not have',
    explain: 'Each command has a short list of options; the help prints it.',
    words: ({ option, nearest }) => ({
      message: `there is no option ${quoted(option)}`,
      ...(nearest.length > 0 && { hint: `did you mean ${listed(nearest)}?` }),
    }),
  }),
};
