export { recheckProgram as programOf } from '../../src/notebook/index.ts';
