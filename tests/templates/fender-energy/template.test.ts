import { describeTemplate } from '../describe-template.ts';

describeTemplate('fender-energy', 8);
