import { describeIndependent } from '../describe-independent.ts';
import { pileBearing } from '../independent/pile-bearing.ts';

describeIndependent(pileBearing);
