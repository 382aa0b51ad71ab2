import type { Study } from '../../study/study.ts';

/** Names of the relays that feed back on one another or on themselves; none where nothing was decided. */
export function rememberingRelays({ circuit, verified }: Study): string[] {
  return verified?.settler.memory.relays.map((k) => circuit.relays[k]!.part) ?? [];
}
