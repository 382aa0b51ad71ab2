/** What `size` alone needs, apart from what all commands share: it is large, and no other command waits for it. */
export * from '../../draw/plot.ts';
export * from '../../lists/size/size.ts';
export * from '../../plan/what-if/plan-with.ts';
export * from '../../plan/what-if/what-if.ts';
export * from '../../report/size.ts';
