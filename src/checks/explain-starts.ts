import type { Documented } from './explain.ts';

export const explainStarts: readonly Documented[] = [];
