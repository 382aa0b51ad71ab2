import type { FindingId } from '../finding-ids.ts';

/** Whether a finding stands, by itself or folded under another. */
export type Stands = (id: FindingId) => boolean;
