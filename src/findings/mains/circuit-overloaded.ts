import { type CircuitJudgement, judgeCircuit } from '../../ratings/circuit.ts';
import type { Study } from '../../study/study.ts';
import { rounded, roundedOrNull } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { type FedPlug, fedPlugs } from './plug-loads.ts';

const entry: FindingEntry = {
  id: 'circuit-overloaded',
  title: 'the motor is too big for its circuit',
  severity: 'warning',
  question: 7,
  base: 'dc-chain',
  meaning:
    'What runs on this plug draws more than its circuit allows. The breaker trips in the middle of a cut, or the socket browns. Where practice is nec, 80 % of a 15 or 20 A circuit counts for a plug-in load. Without a breaker rating or the amperes it is a doubt.',
  wrong: 'breaker: 15 A',
  right: 'breaker: 30 A',
  basis: 'NEC 210.20(A), 210.21(B)(2), 430.6(A)(1); elsewhere the least of breaker, plug and fuse',
  followsFrom: ['plug-mismatch'],
};

export const circuitOverloaded: Check = { entry, find };

function find(study: Study): Finding[] {
  const { practice } = study.plan;
  return fedPlugs(study).flatMap(({ plug, loads }) => {
    const judged = judgeCircuit({ plug, loads, practice });
    return judged.verdict === 'pass' ? [] : [overloaded(study, { plug, loads }, judged)];
  });
}

function overloaded({ plan }: Study, { plug, loads }: FedPlug, judged: CircuitJudgement): Finding {
  const [needed, allowed] = [roundedOrNull(judged.needed), roundedOrNull(judged.found)];
  const names = loads.map((l) => l.name);
  const fails = judged.verdict === 'fail';
  return found(plan, entry, {
    severity: fails ? 'warning' : 'doubt',
    parts: [plug.name, ...names],
    at: plug.where.get('breaker') ?? plug.at,
    message: fails
      ? `${listOf(names)} ${names.length > 1 ? 'take' : 'takes'} ${needed} A; the circuit of ${plug.name} allows ${allowed} A`
      : `whether the circuit of ${plug.name} carries ${listOf(names)} cannot be told: ${judged.missing ?? 'a figure'} is missing`,
    why: fails
      ? 'The breaker trips or the socket overheats.'
      : 'A figure that is not stated is never taken as enough.',
    fix: fails
      ? `The circuit of ${plug.name} is ${rounded((judged.needed ?? 0) - (judged.found ?? 0))} A short.`
      : `State ${judged.missing ?? 'the figure'}.`,
    figures: [
      { name: 'needed', value: needed, unit: 'A' },
      { name: 'allowed', value: allowed, unit: 'A' },
    ],
    basis: judged.basis,
  });
}
