/** What a plan allows and needs, as data: format 1 of `pullin size --json`. */
import type * as z from 'zod';
import type { Frozen } from '../../text/frozen.ts';
import type { figureSchema, limitSchema, sectionSchema, sizeSchema } from './size-schema.ts';

export type Limit = Frozen<z.infer<typeof limitSchema>>;
/** A figure that passes where one step beyond it a named check fails. */
export type SizeFigure = Frozen<z.infer<typeof figureSchema>>;
export type Section = Frozen<z.infer<typeof sectionSchema>>;
export type Size = Frozen<z.infer<typeof sizeSchema>>;
export type CoilChoice = Size['coils']['rows'][number];
export type Plot = NonNullable<Size['plot']>;
export type PlotPoint = Plot['lines'][number]['points'][number];
