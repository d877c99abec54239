import { describeIndependent } from '../describe-independent.ts';
import { fenderEnergy } from '../independent/fender-energy.ts';

describeIndependent(fenderEnergy);
