/** Data whose shape stands in a schema, as those who only read it get it. */
export type Frozen<T> = T extends object ? { readonly [K in keyof T]: Frozen<T[K]> } : T;
