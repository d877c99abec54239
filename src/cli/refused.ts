import { type Outcome, type Problem, renderProblem } from '../diagnostics/index.ts';
import { shorten } from './shorten.ts';

/**
 * A command that cannot be carried out: one clear sentence on standard error, and with `--json` in an object on standard
 * output; exit status 2, nothing written.
 */
export class Refused extends Error {
  override readonly name = 'Refused';

  /** What `--json` prints in place of results. */
  printed(): object {
    return { refused: this.message };
  }
}

/** The value, or a refusal that says the first problem; `about` names the file or option it was found in. */
export function valueOrRefuse<T>(outcome: Outcome<T>, about = ''): T {
  if (outcome.ok) return outcome.value;
  throw refusedBy(outcome.problems, about);
}

/** A refusal that says the first of some problems. */
export function refusedBy(problems: readonly Problem[], about = ''): Refused {
  const [first] = problems;
  if (!first) return new Refused(about);
  const said = renderProblem(first.cell === undefined ? first : { ...first, cell: shorten(first.cell) });
  return new Refused(`${about === '' ? '' : `${about}: `}${said}`);
}
