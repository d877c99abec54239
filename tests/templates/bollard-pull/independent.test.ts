import { describeIndependent } from '../describe-independent.ts';
import { bollardPull } from '../independent/bollard-pull.ts';

describeIndependent(bollardPull);
