/** Reports made by hand for the tests of what prints them. */
import { chooseCautions } from '../../src/findings/cautions/choose.ts';
import type { Finding, Report } from '../../src/findings/report-model.ts';
import { QUESTIONS } from '../../src/findings/report-words.ts';
import { FACTS } from '../findings/cautions/some-facts.ts';

export function finding(over: Partial<Finding> = {}): Finding {
  return {
    id: 'gate-dead',
    severity: 'fault',
    question: 2,
    parts: ['planer'],
    terminals: ['planer.NC'],
    line: 34,
    column: 5,
    message: 'Opening the planer gate does not start the collector.',
    why: 'The white core sits on planer.NC, which opens when the switch is pressed.',
    fix: 'Move the white core from planer.NC to planer.NO.',
    figures: [{ name: 'coil volts', value: null, unit: 'V' }],
    basis: 'common practice',
    cause: null,
    also: [],
    repair: null,
    remedies: [],
    ...over,
  };
}

export function report(over: Partial<Report> = {}): Report {
  return {
    format: 1,
    plan: {
      file: 'shop.yaml',
      title: 'Low Meadow workshop',
      practice: 'nec',
      practiceFrom: 'plan',
      lengths: 'm',
    },
    verdict: 'pass',
    questions: QUESTIONS.map((question, i) => ({
      number: i + 1,
      question,
      answer: 'yes',
      figure: `figure ${i + 1}`,
    })),
    findings: [],
    logic: {
      inputs: 3,
      combinations: 8,
      holds: true,
      counterexample: null,
      holdsAtNominalVolts: true,
      restsOn: 'joins',
    },
    coils: [],
    contacts: [],
    cautions: chooseCautions(FACTS),
    defaults: [],
    ...over,
  };
}

/** One mistake with all that can hang on it. */
export function failing(): Report {
  return report({
    verdict: 'fail',
    questions: report().questions.map((q) =>
      q.number === 2 ? { ...q, answer: 'no', figure: '2 of 3 gates start the collector' } : q,
    ),
    findings: [
      finding({
        also: [{ id: 'gate-dead', message: 'The router gate, fed through the planer, is dead too.' }],
      }),
      finding({
        id: 'coil-unsuppressed',
        severity: 'caution',
        question: 4,
        line: 12,
        column: 3,
        message: 'K1 has no suppressor.',
      }),
    ],
    logic: {
      inputs: 3,
      combinations: 8,
      holds: false,
      counterexample: {
        steps: [{ moved: { bandsaw: 'open' } }, { moved: { planer: 'open', router: 'open' } }],
        target: 'collector',
        expected: true,
        found: false,
      },
      holdsAtNominalVolts: false,
      restsOn: 'joins',
    },
    defaults: ['K1 pull-in: 75 % of rated', 'ambient: 40 °C'],
  });
}
