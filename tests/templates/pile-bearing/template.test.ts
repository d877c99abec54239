import { describeTemplate } from '../describe-template.ts';

describeTemplate('pile-bearing', 5);
