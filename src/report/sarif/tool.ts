/** What SARIF tells of the tool: who it is, what it looks for, what it may have to say of its own run. */
import { explanations } from '../../findings/explanations.ts';
import type { FindingId } from '../../findings/finding-ids.ts';
import { QUESTIONS } from '../../findings/report-words.ts';
import { levelOf, message } from './words.ts';

/** Of a run itself (3.19.24), not of a plan. */
const NOTIFICATIONS = {
  'plan-unreadable': 'A plan could not be read, and nothing is known of it.',
  'own-mistake': 'pullin made a mistake of its own at a plan, and nothing is known of that plan.',
  interrupted: 'The run was cut short; plans that are not among the artifacts were not checked.',
} as const;

export type NotificationId = keyof typeof NOTIFICATIONS;

export function descriptorOf(id: NotificationId) {
  return { id, index: Object.keys(NOTIFICATIONS).indexOf(id) };
}

const INDEX = new Map<FindingId, number>(explanations.map(({ id }, index) => [id, index]));

export function ruleIndex(id: FindingId): number {
  return INDEX.get(id) ?? -1;
}

/** The tool component (3.19) with a rule (3.49) for each finding, in the order of the questions. */
export function driver(version: string) {
  return {
    name: 'pullin',
    version,
    semanticVersion: version,
    shortDescription: message('Checks the wiring plan of a dust collector started by switches on its gates.'),
    fullDescription: message(
      'Judges the plan of a wiring, never the wiring itself. No result is not a leave to work: local codes and people licensed to do such work have the last word, and the cautions of the run apply whatever was found.',
    ),
    rules: explanations.map(({ id, severity, question, title, meaning, basis }) => ({
      id,
      shortDescription: message(title),
      fullDescription: message(meaning),
      help: message(
        `${meaning} Basis: ${basis}. What to do in a plan stands with each result; "pullin explain ${id}" shows an extract that has it and one that has not.`,
      ),
      defaultConfiguration: { level: levelOf(severity) },
      properties: { severity, question, asks: QUESTIONS[question - 1] },
    })),
    notifications: Object.entries(NOTIFICATIONS).map(([id, text]) => ({
      id,
      shortDescription: message(text),
      defaultConfiguration: { level: 'error' as const },
    })),
  };
}
