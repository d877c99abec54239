import { describeTemplate } from '../describe-template.ts';

describeTemplate('debris-haul', 6);
