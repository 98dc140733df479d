import { createHash } from 'node:crypto';
import type { Sha256 } from '../pack/pack-plan.ts';

/** SHA-256 by Node. */
export const sha256: Sha256 = {
  hex: (content) => createHash('sha256').update(content).digest('hex'),
  base64: (content) => createHash('sha256').update(content).digest('base64'),
};
