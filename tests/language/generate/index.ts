export { type Growth, grow, growCall, mayGive, type Place } from './grow.ts';
export { type Piece, partsOf, printPiece, withParts } from './piece.ts';
export { anyValue, dimensions, keyOf, unitsOf } from './quantities.ts';
export { type Random, randomFrom } from './random.ts';
export { type Signature, signatureByName, signatures, slotsFor } from './signatures.ts';
export { type Judged, judge } from './type-of.ts';
export { fillWorld, worldNames, worldScope, worldTables } from './world.ts';
