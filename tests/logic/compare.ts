/** Product against the enumerating oracle on one plan text: where they differ, in words. */

import type { Circuit } from '../../src/circuit/circuit.ts';
import { judge as judged } from '../../src/findings/judge.ts';
import { everIn } from '../../src/logic/entry-states.ts';
import type { Verified } from '../../src/logic/verify.ts';
import { judge } from '../oracles/brute.ts';
import { Machine } from '../oracles/brute-machine.ts';
import { hardFindings, isOn, movedOf, settled, studyOf } from './product.ts';

export interface Comparison {
  readonly states: number;
  readonly undecided: boolean;
  /** states were not compared, see `holdOnFollowers` */
  readonly followers: boolean;
  readonly harmful: boolean;
  readonly symptoms: readonly string[];
  readonly found: readonly string[];
  readonly differ: readonly string[];
}

/** Harm that the oracle does not look for: margins of coil and supply, and what shares a box or cable. */
const NOT_IN_ORACLE = new Set([
  'coil-too-low',
  'coil-in-series',
  'coil-holds-in',
  'coil-too-high',
  'supply-overloaded',
  'switch-overloaded',
  'supplies-joined',
  'wire-overloaded',
  'low-voltage-earthed',
]);

/** Every position of every input, as words by name. */
function everyPosition(m: Machine): { at: number[]; words: Record<string, string> }[] {
  let all: number[][] = [[]];
  for (const x of m.circuit.inputs) all = all.flatMap((at) => x.words.map((_, k) => [...at, k]));
  return all.map((at) => ({
    at,
    words: Object.fromEntries(m.circuit.inputs.map((x, i) => [x.name, x.words[at[i]!]!])),
  }));
}

/**
 * An intent for the relay that starts a load holds for that load as well; the oracle judges only what an intent
 * names, so there the same intent is written out for the load.
 */
function withLoadBehind(text: string, wanted: readonly string[]): string {
  const [, fields] = /^ {2}K\d+: (\{runs-on.*\})$/m.exec(text) ?? [];
  return fields && wanted.includes('fan') ? `${text}  fan: ${fields}\n` : text;
}

/** A contact laid across a coil with something in line is no mistake by itself; the oracle counts it as one. */
function onlyShunted(circuit: Circuit, symptoms: ReadonlySet<string>): boolean {
  const byWire = circuit.relays.some((r) => r.senses.some((x) => x.a === x.b));
  return symptoms.size === 1 && symptoms.has('coil-shorted') && !byWire;
}

/**
 * A relay that feeds back has a relay without feedback in its path. The enumeration moves both in the same step; the
 * product takes the second as already where it will be, so that a break before a make can come out differently.
 */
function holdOnFollowers(v: Verified): boolean {
  const held = new Set(v.settler.memory.relays);
  return [...held].some((k) =>
    [...v.model.bdd.support(v.model.next[k]!)].some((x) => x < v.circuit.relays.length && !held.has(x)),
  );
}

/**
 * A start button outside `runs-on` may start the load by itself or arm it; the product accepts a circuit that does
 * the second, the oracle knows only the first. True where the product took the second reading.
 */
function armsOnly(v: Verified): boolean {
  return v.intents.wanted.some((w) =>
    w.latches.some(
      (l) =>
        !w.intent?.runsOn.some((refs) => refs.some((r) => r.part === l.ref.part)) &&
        w.entries.every((e) => e.refs.length > 1 && e.refs.some((r) => r.part === l.ref.part)),
    ),
  );
}

/** Wrong polarity is a mistake before the supply is ever fed; the oracle sees it only where the supply is live. */
function blamedUnfed(v: Verified, blamed: readonly string[]): boolean {
  const fed = v.circuit.sources.some((s) => !s.mains && everIn(v, v.model.live[s.index]!));
  return !fed && blamed.every((id) => id === 'diode-backwards' || id === 'polarity-reversed');
}

export function compare(text: string): Comparison {
  const differ: string[] = [];
  const s = studyOf(text);
  const v = s.verified;
  const oracle = judge(withLoadBehind(text, v?.intents.wanted.map((w) => w.target) ?? []));
  const found = hardFindings(judged(s)).map((f) => f.id);
  const base = {
    states: oracle.combinations,
    harmful: oracle.harmful,
    symptoms: [...oracle.symptoms],
    found,
  };
  if (!v) return { ...base, undecided: true, followers: false, differ };
  const m = new Machine(text);
  const names = [...m.circuit.relays.map((r) => r.name), ...m.circuit.consumers.map((c) => c.name)];
  const rest = m.settle(
    m.circuit.inputs.map(() => 0),
    0,
  );
  // With no one position at rest there is nothing to start from.
  // Where relays that hold hang on relays that only follow, the product lets the followers arrive first.
  const followers = holdOnFollowers(v);
  // Where mains meets the loop, the oracle leaves out the current through the loads' windings.
  if (rest.fate === 'rests' && !followers && !oracle.symptoms.has('mains-meets-low-voltage'))
    for (const { at, words } of everyPosition(m)) {
      const settles = m.settle(at, rest.ends[0]!);
      const moved = movedOf(v, words);
      const mode = settled(v, v.restMode, moved);
      const said = JSON.stringify(words);
      if (settles.fate === 'chatters' && mode !== undefined)
        differ.push(`rests in product, chatters in oracle: ${said}`);
      if (settles.fate !== 'chatters' && mode === undefined)
        differ.push(`chatters in product, not in oracle: ${said}`);
      if (settles.fate !== 'rests' || mode === undefined) continue;
      for (const n of names) {
        const mine = isOn(v, n, mode, moved);
        if (mine !== m.on(n, at, settles.ends[0]!))
          differ.push(`${n} is ${mine ? 'on' : 'off'} in product only: ${said}`);
      }
    }
  if (oracle.harmful && found.length === 0 && !onlyShunted(s.circuit, oracle.symptoms) && !armsOnly(v))
    differ.push(`missed: ${[...oracle.symptoms].join(', ')}`);
  const blamed = found.filter((id) => !NOT_IN_ORACLE.has(id));
  if (!oracle.harmful && blamed.length > 0 && !blamedUnfed(v, blamed))
    differ.push(`invented: ${blamed.join(', ')}`);
  return { ...base, undecided: false, followers, differ };
}
