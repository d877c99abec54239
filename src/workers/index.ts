export type { CasesReply, CasesRequest, RecheckReply, RecheckRequest } from './messages.ts';
