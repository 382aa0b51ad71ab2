import type { Documented } from './explain.ts';

export const explainApart: readonly Documented[] = [];
