/** What a plan allows and needs, as data: format 1 of `pullin size --json`. */
import type * as z from 'zod';
import type { figureSchema, limitSchema, sectionSchema, sizeSchema } from './size-schema.ts';

type Frozen<T> = T extends readonly (infer E)[]
  ? readonly Frozen<E>[]
  : T extends object
    ? { readonly [K in keyof T]: Frozen<T[K]> }
    : T;

export type Limit = Frozen<z.infer<typeof limitSchema>>;
/** A figure that passes where one step beyond it a named check fails. */
export type SizeFigure = Frozen<z.infer<typeof figureSchema>>;
export type Section = Frozen<z.infer<typeof sectionSchema>>;
export type Size = Frozen<z.infer<typeof sizeSchema>>;
export type CoilChoice = Size['coils']['rows'][number];
export type Plot = NonNullable<Size['plot']>;
export type PlotPoint = Plot['lines'][number]['points'][number];
