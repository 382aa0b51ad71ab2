/** What `new` alone needs beside `late.ts`, so that no other command carries it. */
export * from '../../lists/new/answering.ts';
export * from '../../lists/new/answers-file.ts';
export * from '../../lists/new/new-plan.ts';
export * from '../../lists/new/questions.ts';
export * from '../../report/new-plan.ts';
