import { huntCommandLine } from './command-line.ts';

const count = Number(process.argv[2] ?? 20_000);
const seed = Number(process.argv[3] ?? 20261128);

console.log(`${count} hostile inputs through the command line, seed ${seed}`);
const harms = await huntCommandLine(count, seed, (harm) => console.log(JSON.stringify(harm)));
console.log(`${harms.length} did harm`);
process.exitCode = harms.length > 0 ? 1 : 0;
