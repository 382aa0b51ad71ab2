import type { Documented } from './explain.ts';

export const explainLoop: readonly Documented[] = [];
