export type { RecheckReply, RecheckRequest } from './messages.ts';
