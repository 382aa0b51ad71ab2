import type { Documented } from './explain.ts';

export const explainMains: readonly Documented[] = [];
