export { type CheckedBag, checkBag } from './bag/check-bag.ts';
export { checksum } from './bag/checksum.ts';
