import type { Study } from './study.ts';

/** Work that several products share: done once a Study, when it is first asked for. */
export function perStudy<T>(make: (study: Study) => T): (study: Study) => T {
  const known = new WeakMap<Study, { readonly made: T }>();
  return (study) => {
    let found = known.get(study);
    if (!found) {
      found = { made: make(study) };
      known.set(study, found);
    }
    return found.made;
  };
}
