/** A reading at a failure's own terminals that shows it where nothing at the machine does. */
import type { Study } from '../../study/study.ts';
import type { Fault } from '../fault.ts';
import { loopKind, type Observation, observe } from '../hunt/observation.ts';
import { PlainForm } from '../hunt/plain-form.ts';
import { Predictor, type Suspect } from '../hunt/predict.ts';
import { nearestInputs } from '../nearest.ts';
import { marksOf } from '../probe-words.ts';
import { REST, stanceOf } from '../stance.ts';

/** Terminals of a failure, pairs of which are read. */
const TERMINALS = 3;
/** Circuits kept at hand: the right one, and that of the failure in question. */
const AT_HAND = 4;

export class OwnReadings {
  private readonly predictor: Predictor;
  private readonly form: PlainForm;
  private readonly mark: (key: string) => string;
  private readonly near: (parts: readonly string[]) => readonly number[];
  private readonly right: Suspect = { faults: [], weight: 1 };

  constructor(private readonly study: Study) {
    this.predictor = new Predictor(study, AT_HAND);
    this.form = new PlainForm(study);
    this.mark = marksOf(study.plan);
    this.near = nearestInputs(study.plan, study.wired);
  }

  /** In words; undefined where none of these readings does. */
  of(fault: Fault): string | undefined {
    if (fault.untold) return undefined;
    const suspect: Suspect = { faults: [fault], weight: 1 };
    const found = this.readings(fault).find((o) => !this.predictor.meet(this.right, suspect, o));
    return found && this.words(found);
  }

  private words(o: Extract<Observation, { kind: 'volts' | 'ohms' }>): string {
    const way =
      o.kind === 'ohms' ? 'unplugged, ohms' : `with the loop alone on, ${o.range.toUpperCase()} volts`;
    const right = this.form.line({ observation: o, answer: this.predictor.answer(this.right, o) });
    const shows = right.replace(/^.* = /, '').replace(/ with .*$/, '');
    return `in no position at the machine; ${way} from ${this.mark(o.pair.a)} to ${this.mark(o.pair.b)} with ${this.form.positions(o.stance)}: ${shows} is right`;
  }

  private readings({ at, parts }: Fault): Extract<Observation, { kind: 'volts' | 'ohms' }>[] {
    const ends = at.slice(0, TERMINALS);
    const pairs = ends.flatMap((a, i) =>
      ends.slice(i + 1).map((b) => ({ a, b, cost: 1, far: false, main: false })),
    );
    const stances = [REST, ...this.near(parts).map((i) => stanceOf([i]))];
    const range = loopKind(this.study);
    const onMains = (key: string) => this.study.sides.mains.has(this.study.circuit.netOf.get(key) ?? -1);
    return stances.flatMap((stance) =>
      pairs.flatMap((pair) => [
        observe({ kind: 'ohms', stance, pair }),
        ...(onMains(pair.a) || onMains(pair.b) ? [] : [observe({ kind: 'volts', stance, pair, range })]),
      ]),
    ) as Extract<Observation, { kind: 'volts' | 'ohms' }>[];
  }
}
