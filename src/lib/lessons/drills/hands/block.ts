import type { Hands } from './hand.ts';

export const BLOCK_HANDS: Hands = {
  find: { tools: ['identify'], asked: (v) => v.toFind! },
  read: { tools: ['read'] },
  'open-out': { tools: ['open-out'] },
};
