/** A contact's current in a category of use, with the volts that are mostly printed beside it. */
import type { CurrentKind } from './device-figures.ts';
import { define, Problem, type Quantity } from './quantity-reader.ts';
import { AMP } from './quantity-units.ts';
import { readVolts } from './rated-quantity.ts';

/** A current of a category; `volts` in V where they are printed, and it then says nothing of higher ones. */
export interface CategoryAmps {
  readonly amps: number;
  readonly volts?: number;
}

/** `12 A`, `12 A 230 V AC`, `12 A 230 V`, in either order; the category itself is of one kind of current. */
export function categoryAmps(category: string, kind: CurrentKind): Quantity<CategoryAmps> {
  const example = kind === 'ac' ? '12 A 230 V AC' : '1 A 24 V DC';
  return define(
    `a current${kind === 'ac' ? ' on AC' : ' on DC'}`,
    ['A', 'mA'],
    ['9 A', example],
    (reader) => {
      const amps = (): number | undefined => {
        const start = reader.at;
        const value = reader.number();
        const factor = value === undefined ? undefined : reader.unit(AMP);
        if (value !== undefined && factor !== undefined) return value * factor;
        reader.at = start;
        return undefined;
      };
      let current = amps();
      reader.take('@', '/', ',', 'at ');
      if (current !== undefined && reader.ended())
        return current > 0 ? { amps: current } : new Problem('expected more than zero amperes');
      const at = readVolts(reader, true);
      if (at === undefined || at instanceof Problem) return at;
      if (at.kind !== undefined && at.kind !== kind)
        return new Problem(
          `expected V ${kind.toUpperCase()}: ${category} is a category of ${kind.toUpperCase()}`,
        );
      reader.take('@', '/', ',');
      current ??= amps();
      if (current === undefined) return undefined;
      return current > 0
        ? { amps: current, volts: at.volts }
        : new Problem('expected more than zero amperes');
    },
  );
}
