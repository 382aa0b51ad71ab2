/** Coils on the low-voltage supplies and what they draw, with nominal resistance and ideal wires. */
import type { FedCoil } from '../../study/fed-coils.ts';
import { perStudy } from '../../study/per-study.ts';

/** Coils that a low-voltage supply of their own kind of current feeds. */
export const loopCoils = perStudy((study): readonly FedCoil[] =>
  study.fedCoils.filter((c) => !c.source.mains && c.source.kind === c.model.kind),
);

/** A at rated volts once pulled in; none where the plan does not tell. */
export function holdingAmps({ model }: FedCoil): number {
  return model.ohms === undefined ? 0 : model.rated / model.ohms;
}

/** A at rated volts while pulling in; none where the plan does not tell. */
export function inrushAmps({ model }: FedCoil): number {
  const ohms = model.kind === 'ac' ? (model.inrushOhms ?? model.ohms) : model.ohms;
  return ohms === undefined ? 0 : model.rated / ohms;
}
