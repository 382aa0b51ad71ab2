/** What `check` needs beyond its arguments, loaded as one piece: other commands take it along. */
export * from '../../findings/compare.ts';
export * from '../../findings/judge.ts';
export * from '../../findings/verdict-line.ts';
export * from '../../plan/errors.ts';
export * from '../../plan/read.ts';
export * from '../../repair/check.ts';
export * from '../../report/check.ts';
export * from '../../report/compared.ts';
export * from '../../report/forms/text.ts';
export * from '../../report/told.ts';
export * from '../../study/study.ts';
