/** The low-voltage cables of a design: from the supply through what stops the collector, past the gates, to the coils. */
import type { Answers, Distance } from './answers.ts';
import { type Design, needsOverload } from './design.ts';
import { coilsWithDiode, isDc, type Laid, overloadName, supplyName, usualLengths } from './told.ts';

/** The tab of a gate's switch that closes as the gate opens. */
export const gateTab = ({ lever }: Answers): 'NO' | 'NC' => (lever === 'open' ? 'NO' : 'NC');

export const loopColours = ({ practice }: Answers): readonly [string, string] =>
  practice === 'nec' ? ['red', 'white'] : ['red', 'black'];

/** Cables of the gates by the layout. */
export function gateRuns({ answers }: Design, feed: string, call: string): Laid[] {
  const [go, back] = loopColours(answers);
  const tab = gateTab(answers);
  const piece = (length: Distance, from: readonly [string, string], to: string): Laid => ({
    cable: 'bell',
    length: length.text,
    cores: { [go]: [from[0], `${to}.COM`], [back]: [from[1], `${to}.${tab}`] },
  });
  const { gates, layout } = answers;
  const ends = (name: string): readonly [string, string] => [`${name}.COM`, `${name}.${tab}`];
  const runs = gates.map((gate, i) =>
    piece(gate.length, layout === 'star' || i === 0 ? [feed, call] : ends(gates[i - 1]!.name), gate.name),
  );
  const last = gates.at(-1);
  if (layout !== 'ring' || last === undefined || answers.return === undefined) return runs;
  const [com, other] = ends(last.name);
  return [
    ...runs,
    { cable: 'bell', length: answers.return.text, cores: { [go]: [com, feed], [back]: [other, call] } },
  ];
}

/** Everything of low voltage but the gates' own cables: feed, cut-outs, hand switch, coils. */
export function lowRuns(d: Design): {
  readonly before: readonly Laid[];
  readonly after: readonly Laid[];
  readonly joints: readonly string[];
  readonly feed: string;
} {
  const { answers, between } = d;
  const [go, back] = loopColours(answers);
  const [plus, minus] = isDc(d) ? ['+', '-'] : ['~1', '~2'];
  const usual = usualLengths(answers);
  const supply = supplyName(d);
  const stops = [
    ...(needsOverload(answers) ? [{ name: overloadName, length: undefined }] : []),
    ...answers.cutouts,
  ];
  const bars = ['feed', ...stops.map((_, i) => (i === stops.length - 1 ? 'go' : `feed-${i + 2}`))];
  const before: Laid[] =
    d.fuse === undefined
      ? [
          {
            cable: 'bell',
            length: usual.supply,
            cores: { [go]: [`${supply}.${plus}`, bars[0]!], [back]: [`${supply}.${minus}`, 'common'] },
          },
        ]
      : [
          { link: [`${supply}.${plus}`, 'F1.1'] },
          {
            cable: 'bell',
            length: usual.supply,
            cores: { [go]: ['F1.2', bars[0]!], [back]: [`${supply}.${minus}`, 'common'] },
          },
        ];
  for (const [i, stop] of stops.entries()) {
    const [from, to] = [bars[i]!, bars[i + 1]!];
    if (stop.length === undefined)
      before.push({ link: [from, `${stop.name}.95`] }, { link: [`${stop.name}.96`, to] });
    else
      before.push({
        cable: 'bell',
        length: stop.length.text,
        cores: { [go]: [from, `${stop.name}.COM`], [back]: [to, `${stop.name}.NC`] },
      });
  }
  const feed = bars.at(-1)!;
  const after: Laid[] = [];
  if (answers.hand !== undefined)
    after.push({
      cable: 'bell',
      length: answers.hand.text,
      cores: { [go]: [feed, 'hand.COM'], [back]: ['call', 'hand.NO'] },
    });
  if (between === 'none') after.push({ link: ['call', 'Q1.A1'] });
  else {
    const name = between === 'timer' ? 'KT1' : 'K1';
    const [common, make] = between === 'timer' ? ['15', '18'] : ['COM', 'NO'];
    after.push({ link: ['call', `${name}.A1`] }, { link: ['common', `${name}.A2`] });
    after.push({ link: [feed, `${name}.${common}`] }, { link: [`${name}.${make}`, 'Q1.A1'] });
  }
  after.push({ link: ['common', 'Q1.A2'] });
  for (const [i, coil] of coilsWithDiode(d).entries())
    after.push({ link: [`D${i + 1}.K`, `${coil}.A1`] }, { link: [`D${i + 1}.A`, `${coil}.A2`] });
  return { before, after, joints: [...bars, 'call', 'common'], feed };
}
