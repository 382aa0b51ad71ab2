/** Coils on the low-voltage supplies and what they draw, with nominal resistance and ideal wires. */

import { coilAmps, takesKind } from '../../ratings/coil.ts';
import type { FedCoil } from '../../study/fed-coils.ts';
import { perStudy } from '../../study/per-study.ts';

/** Coils that a low-voltage supply of their own kind of current feeds. */
export const loopCoils = perStudy((study): readonly FedCoil[] =>
  study.fedCoils.filter((c) => !c.source.mains && takesKind(c.model, c.source.kind)),
);

/** A at rated volts once pulled in; none where the plan does not tell. */
export function holdingAmps(coil: FedCoil): number {
  const copper = copperOnDc(coil);
  return copper === undefined ? (coilAmps(coil.model) ?? 0) : coil.model.rated / copper;
}

/** A at rated volts while pulling in; none where the plan does not tell. */
export function inrushAmps(coil: FedCoil): number {
  const { model } = coil;
  const starting = model.kind === 'ac' || model.electronic ? (model.inrushOhms ?? model.ohms) : model.ohms;
  const ohms = copperOnDc(coil) ?? starting;
  return ohms === undefined ? 0 : (model.at ?? model.rated) / ohms;
}

/** ohm of an AC coil on DC, where nothing but its copper holds the current back; undefined for others and unstated copper. */
export function copperOnDc({ model, source }: FedCoil): number | undefined {
  return !model.electronic && model.kind === 'ac' && source.kind === 'dc' ? model.copperOhms : undefined;
}
