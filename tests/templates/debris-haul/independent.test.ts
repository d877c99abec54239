import { describeIndependent } from '../describe-independent.ts';
import { debrisHaul } from '../independent/debris-haul.ts';

describeIndependent(debrisHaul);
