/** An object without its undefined values, typed so. */
export type Kept<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};

/** A copy without the keys whose value is undefined. */
export function withoutUndefined<T extends object>(values: T): Kept<T> {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as Kept<T>;
}
