import { templateBook } from '../../src/cli/books.ts';
import { contest, type Tally } from './independent/contest.ts';
import { programs } from './independent/programs.ts';

// npm run contest -- [TEMPLATE...] [--draws=50000] [--seed=1] [--first=0] [--inputs]: draws inputs, and compares the templates
// with programs that were written apart from them; --inputs prints what was drawn where something differs first.
const args = process.argv.slice(2);
const named = args.filter((arg) => !arg.startsWith('--'));
const option = (name: string, otherwise: number): number => {
  const given = args.find((arg) => arg.startsWith(`--${name}=`));
  const value = given === undefined ? otherwise : Number(given.slice(name.length + 3));
  if (!Number.isInteger(value) || value < 0) throw new Error(`--${name} takes a whole number`);
  return value;
};
const [draws, seed, first] = [option('draws', 50_000), option('seed', 1), option('first', 0)];
const unknown = named.filter((id) => !programs.some(({ template }) => template === id));
if (unknown.length > 0) throw new Error(`there is no independent program for ${unknown.join(', ')}`);

for (const program of programs) {
  const id = program.template;
  if (named.length > 0 && !named.includes(id)) continue;
  const start = performance.now();
  const tallies = contest(templateBook(id), program, { draws, seed, first });
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  const differing = [...tallies].filter(([, { differed }]) => differed > 0);
  console.log(`\n${id}: ${draws} draws from ${first} on, seed ${seed}, ${seconds} s`);
  console.log('  compared  both valued   differed   worst agreeing  result');
  for (const [name, tally] of tallies) console.log(row(name, tally));
  for (const [name, { differed, first: one }] of differing) {
    console.log(`\n${name} differs ${differed} times, first in draw ${one?.draw}: ${one?.words}`);
    if (args.includes('--inputs')) console.log(JSON.stringify(one?.drawn));
  }
  console.log(`\n${id}: ${tallies.size} results compared, ${differing.length} differ`);
  if (differing.length > 0) process.exitCode = 1;
}

function row(name: string, { compared, valued, differed, worst, stands }: Tally): string {
  const numbers = [compared, valued, differed].map((count) => String(count).padStart(10)).join('');
  const said = [...stands].map(([verdict, [template, own]]) => `${verdict} ${template}/${own}`).join(', ');
  return `${numbers}   ${worst.toExponential(1).padStart(10)}   ${name}${said ? `  (${said})` : ''}`;
}
