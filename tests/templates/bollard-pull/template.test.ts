import { describeTemplate } from '../describe-template.ts';

describeTemplate('bollard-pull', 8);
