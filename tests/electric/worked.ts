/**
 * Networks of resistors and sources with printed answers, for the nodal solver. Each names its publication; figures
 * are as printed, to be met to half a unit of the last digit. What the publication rounded from a rounded step, or
 * misprinted, is left out.
 */

/** name, from, to, volts or ohms */
export type Element = readonly [string, string, string, number];

export interface Worked {
  readonly id: string;
  readonly source: string;
  readonly reference: string;
  readonly sources: readonly Element[];
  readonly resistors: readonly Element[];
  /** what, of which node or element, as printed, and the factor from V, A or W to the printed unit */
  readonly printed: readonly (readonly ['node' | 'voltage' | 'current' | 'power', string, string, number?])[];
}

export const worked: readonly Worked[] = [
  {
    id: 'cp-parallel-12v',
    source:
      'College Physics 2e (OpenStax), 2nd edition, web source as of July 2026, section 21.1, Example 21.2',
    reference: '0',
    sources: [['V', '1', '0', 12]],
    resistors: [
      ['R1', '1', '0', 1],
      ['R2', '1', '0', 6],
      ['R3', '1', '0', 13],
    ],
    printed: [
      ['current', 'R1', '12.0'],
      ['current', 'R2', '2.00'],
      ['current', 'R3', '0.92'],
      ['power', 'R1', '144'],
      ['power', 'R2', '24.0'],
      ['power', 'R3', '11.1'],
    ],
  },
  {
    id: 'cp-series-12v',
    source:
      'College Physics 2e (OpenStax), 2nd edition, web source as of July 2026, section 21.1, Example 21.1',
    reference: '0',
    sources: [['V', '1', '0', 12]],
    resistors: [
      ['R1', '1', '2', 1],
      ['R2', '2', '3', 6],
      ['R3', '3', '0', 13],
    ],
    printed: [
      ['current', 'R1', '0.600'],
      ['voltage', 'R1', '0.600'],
      ['voltage', 'R2', '3.60'],
      ['voltage', 'R3', '7.80'],
      ['power', 'R1', '0.360'],
      ['power', 'R2', '2.16'],
      ['power', 'R3', '4.68'],
    ],
  },
  {
    id: 'cp-two-emf-internal-resistance',
    source:
      "College Physics 2e (OpenStax), 2nd edition, web source as of July 2026, section 21.3 Kirchhoff's Rules, Example 21.5",
    reference: 'a',
    sources: [
      ['E1', 'c', 'b', 18],
      ['E2', 'g', 'a', 45],
    ],
    resistors: [
      ['r1', 'c', 'e', 0.5],
      ['R2', 'a', 'b', 2.5],
      ['R1', 'e', 'a', 6],
      ['r2', 'g', 'f', 0.5],
      ['R3', 'f', 'e', 1.5],
    ],
    printed: [
      ['current', 'R1', '4.75'],
      ['current', 'R2', '-3.50'],
      ['current', 'R3', '8.25'],
    ],
  },
  {
    id: 'doe-node-voltage',
    source:
      'DOE Fundamentals Handbook, Electrical Science, Volume 1, DOE-HDBK-1011/1-92, June 1992, Module 2 Basic DC Theory (ES-02), "DC circuit analysis", node equations, figure 45, pages 57 and 58',
    reference: '0',
    sources: [
      ['VA', 'A', '0', 60],
      ['VB', 'B', '0', 20],
    ],
    resistors: [
      ['R1', 'A', 'N', 8],
      ['R2', 'N', '0', 6],
      ['R3', 'B', 'N', 4],
    ],
    printed: [
      ['node', 'N', '23.077'],
      ['voltage', 'R1', '36.923'],
      ['voltage', 'R3', '-3.077'],
      ['current', 'R2', '3.846'],
      ['current', 'R3', '-0.769'],
    ],
  },
  {
    id: 'doe-three-source-loops',
    source:
      'DOE Fundamentals Handbook, Electrical Science, Volume 1, DOE-HDBK-1011/1-92, June 1992, Module 2 Basic DC Theory (ES-02), "DC circuit analysis", loop equations, figures 37 to 40, pages 49 to 52',
    reference: 'E',
    sources: [
      ['E8', 'C', 'A', 8],
      ['E10', 'D', 'E', 10],
      ['E40', 'g', 'C', 40],
    ],
    resistors: [
      ['R3', 'D', 'C', 200],
      ['R1', 'E', 'A', 50],
      ['R2', 'g', 'E', 100],
    ],
    printed: [['current', 'R1', '268.6', 1000]],
  },
  {
    id: 'li-bridge-unbalanced-24v',
    source:
      'Lessons In Electric Circuits, Volume I - DC (T. R. Kuphaldt), 5th edition, 18 October 2006, ch. 10, section "Mesh current method", unbalanced Wheatstone bridge, with its netlist printout',
    reference: '0',
    sources: [['V1', '1', '0', 24]],
    resistors: [
      ['R1', '1', '2', 150],
      ['R2', '1', '3', 50],
      ['R3', '3', '2', 100],
      ['R4', '2', '0', 300],
      ['R5', '3', '0', 250],
    ],
    printed: [
      ['current', 'R1', '42.299', 1000],
      ['current', 'R2', '93.793', 1000],
      ['current', 'R3', '16.552', 1000],
      ['current', 'R4', '58.851', 1000],
      ['current', 'R5', '77.241', 1000],
      ['voltage', 'R1', '6.3448'],
      ['voltage', 'R2', '4.6897'],
      ['voltage', 'R3', '1.6552'],
      ['node', '2', '17.6552'],
      ['node', '3', '19.3103'],
    ],
  },
  {
    id: 'li-max-power-matched',
    source:
      'Lessons In Electric Circuits, Volume I - DC (T. R. Kuphaldt), 5th edition, 18 October 2006, ch. 10, section "Maximum power transfer theorem"',
    reference: '0',
    sources: [['V1', '1', '0', 11.2]],
    resistors: [
      ['Rsrc', '1', '2', 0.8],
      ['Rload', '2', '0', 0.8],
    ],
    printed: [
      ['current', 'Rload', '7'],
      ['voltage', 'Rload', '5.6'],
      ['power', 'Rload', '39.2'],
    ],
  },
  {
    id: 'li-max-power-high',
    source:
      'Lessons In Electric Circuits, Volume I - DC (T. R. Kuphaldt), 5th edition, 18 October 2006, ch. 10, section "Maximum power transfer theorem"',
    reference: '0',
    sources: [['V1', '1', '0', 11.2]],
    resistors: [
      ['Rsrc', '1', '2', 0.8],
      ['Rload', '2', '0', 1.1],
    ],
    printed: [
      ['current', 'Rload', '5.895'],
      ['voltage', 'Rload', '6.484'],
      ['power', 'Rload', '38.22'],
      ['power', 'Rsrc', '27.80'],
    ],
  },
  {
    id: 'li-node-voltage-two-source',
    source:
      'Lessons In Electric Circuits, Volume I - DC (T. R. Kuphaldt), 5th edition, 18 October 2006, ch. 10, section "Node voltage method", first example',
    reference: '0',
    sources: [
      ['V1', '11', '0', 10],
      ['V2', '0', '22', 4],
    ],
    resistors: [
      ['R1', '11', '1', 2],
      ['R2', '1', '0', 4],
      ['R3', '1', '2', 2.5],
      ['R4', '2', '0', 5],
      ['R5', '2', '22', 1],
    ],
    printed: [
      ['node', '1', '3.809524'],
      ['node', '2', '-1.547619'],
    ],
  },
  {
    id: 'li-parallel-9v',
    source:
      'Lessons In Electric Circuits, Volume I - DC (T. R. Kuphaldt), 5th edition, 18 October 2006, ch. 5, section "Simple parallel circuits"',
    reference: '0',
    sources: [['V1', '1', '0', 9]],
    resistors: [
      ['R1', '1', '0', 10000],
      ['R2', '1', '0', 2000],
      ['R3', '1', '0', 1000],
    ],
    printed: [
      ['current', 'R1', '0.9000', 1000],
      ['current', 'R2', '4.500', 1000],
      ['current', 'R3', '9.000', 1000],
    ],
  },
  {
    id: 'li-series-parallel-24v',
    source:
      'Lessons In Electric Circuits, Volume I - DC (T. R. Kuphaldt), 5th edition, 18 October 2006, ch. 7 Series-parallel combination circuits, section "Analysis technique", with netlist printout',
    reference: '0',
    sources: [['V1', '1', '0', 24]],
    resistors: [
      ['R1', '1', '4', 100],
      ['R2', '1', '4', 250],
      ['R3', '4', '0', 350],
      ['R4', '4', '0', 200],
    ],
    printed: [
      ['node', '4', '15.37'],
      ['current', 'R1', '86.27', 1000],
      ['current', 'R2', '34.51', 1000],
      ['current', 'R3', '43.92', 1000],
      ['current', 'R4', '76.86', 1000],
    ],
  },
  {
    id: 'up-bridge-internal-resistance',
    source:
      'University Physics, Volume 2 (OpenStax), web source as of June 2026, ch. 10, Additional Problem 85',
    reference: 'bot',
    sources: [['E', 'top', 'x', 20]],
    resistors: [
      ['r', 'bot', 'x', 5],
      ['R1', 'top', 'lft', 15],
      ['R2', 'top', 'rgt', 10],
      ['R3', 'lft', 'bot', 10],
      ['R4', 'rgt', 'bot', 15],
      ['R5', 'rgt', 'lft', 5],
    ],
    printed: [
      ['current', 'r', '1.17'],
      ['current', 'R1', '0.50'],
      ['current', 'R2', '0.67'],
      ['current', 'R3', '0.67'],
      ['current', 'R4', '0.50'],
      ['current', 'R5', '0.17'],
    ],
  },
  {
    id: 'up-five-currents',
    source:
      'University Physics, Volume 2 (OpenStax), web source as of June 2026, section 10.3, end-of-chapter Problem 41',
    reference: 'b',
    sources: [
      ['V1', 't', 'a', 12],
      ['V2', 't', 'c', 5],
    ],
    resistors: [
      ['R2', 'b', 'a', 3],
      ['R1', 't', 'b', 4],
      ['R3', 'c', 'b', 2],
      ['R4', 't', 'c', 2],
    ],
    printed: [
      ['current', 'R1', '1.5'],
      ['current', 'R2', '2'],
      ['current', 'R3', '0.5'],
      ['current', 'R4', '2.5'],
    ],
  },
  {
    id: 'up-lead-resistance-two-loads',
    source: 'University Physics, Volume 2 (OpenStax), web source as of June 2026, section 10.2, Example 10.4',
    reference: '0',
    sources: [['V', '1', '0', 12]],
    resistors: [
      ['R1', '1', '2', 1],
      ['R2', '2', '0', 6],
      ['R3', '2', '0', 13],
    ],
    printed: [
      ['voltage', 'R1', '2.35'],
      ['voltage', 'R2', '9.65'],
      ['current', 'R2', '1.61'],
      ['power', 'R2', '15.5'],
    ],
  },
  {
    id: 'up-series-18v',
    source:
      'University Physics, Volume 2 (OpenStax), web source as of June 2026, section 10.2, end-of-chapter Problem 35',
    reference: '0',
    sources: [['V', '1', '0', 18]],
    resistors: [
      ['R1', '1', '2', 4],
      ['R2', '2', '3', 1],
      ['R3', '3', '0', 4],
    ],
    printed: [
      ['current', 'R1', '2.00'],
      ['voltage', 'R1', '8.00'],
      ['voltage', 'R2', '2.00'],
      ['voltage', 'R3', '8.00'],
      ['power', 'R1', '16.00'],
      ['power', 'R2', '4.00'],
    ],
  },
  {
    id: 'up-series-five',
    source: 'University Physics, Volume 2 (OpenStax), web source as of June 2026, section 10.2, Example 10.2',
    reference: '0',
    sources: [['V', '1', '0', 9]],
    resistors: [
      ['R1', '1', '2', 20],
      ['R2', '2', '3', 20],
      ['R3', '3', '4', 20],
      ['R4', '4', '5', 20],
      ['R5', '5', '0', 10],
    ],
    printed: [
      ['current', 'R1', '0.1'],
      ['voltage', 'R1', '2'],
      ['voltage', 'R5', '1'],
      ['power', 'R1', '0.2'],
      ['power', 'R5', '0.1'],
    ],
  },
  {
    id: 'up-series-opposing',
    source:
      "University Physics, Volume 2 (OpenStax), web source as of June 2026, section 10.3 Kirchhoff's Rules, Example 10.7",
    reference: 'c',
    sources: [
      ['V2', 'x', 'c', 24],
      ['V1', 'y', 'd', 12],
    ],
    resistors: [
      ['R3', 'x', 'a', 20],
      ['R1', 'a', 'y', 10],
      ['R2', 'd', 'c', 30],
    ],
    printed: [
      ['current', 'R1', '0.20'],
      ['power', 'R1', '0.40'],
      ['power', 'R2', '1.20'],
      ['power', 'R3', '0.80'],
    ],
  },
  {
    id: 'up-series-parallel-50v',
    source: 'University Physics, Volume 2 (OpenStax), web source as of June 2026, section 10.2, Example 10.5',
    reference: '0',
    sources: [['V', '1', '0', 50]],
    resistors: [
      ['R1', '1', '2', 10],
      ['R2', '2', '3', 10],
      ['R3', '3', '0', 10],
      ['R4', '3', '0', 10],
    ],
    printed: [
      ['current', 'R1', '2.00'],
      ['current', 'R3', '1.00'],
      ['power', 'R1', '40.00'],
      ['power', 'R3', '10.00'],
    ],
  },
  {
    id: 'up-three-source-two-loop',
    source:
      "University Physics, Volume 2 (OpenStax), web source as of June 2026, section 10.3 Kirchhoff's Rules, Example 10.6",
    reference: 'c',
    sources: [
      ['V1', 'x', 'a', 0.5],
      ['V3', 'y', 'e', 2.3],
      ['V2', 'f', 'z', 0.6],
    ],
    resistors: [
      ['R4', 'x', 'c', 2],
      ['R1', 'f', 'a', 1],
      ['R2', 'f', 'e', 5],
      ['R5', 'y', 'd', 1],
      ['R6', 'd', 'c', 2],
      ['R3', 'c', 'z', 1],
    ],
    printed: [
      ['current', 'R1', '0.20'],
      ['current', 'R2', '0.30'],
      ['current', 'R3', '0.50'],
      ['power', 'R1', '0.04'],
      ['power', 'R2', '0.45'],
      ['power', 'R3', '0.25'],
      ['power', 'R4', '0.08'],
      ['power', 'R5', '0.09'],
      ['power', 'R6', '0.18'],
    ],
  },
  {
    id: 'up-two-source-aiding-opposing-a',
    source:
      'University Physics, Volume 2 (OpenStax), web source as of June 2026, section 10.3, end-of-chapter Problem 37, parts (a) and (b)',
    reference: 'm',
    sources: [
      ['V1', 't', 'p', 1.6],
      ['V2', 't', 'q', 1.4],
    ],
    resistors: [
      ['R2', 'm', 'p', 1000],
      ['R1', 't', 'm', 2000],
      ['R3', 'm', 'q', 1000],
    ],
    printed: [
      ['current', 'R1', '0.6', 1000],
      ['current', 'R2', '0.4', 1000],
      ['current', 'R3', '0.2', 1000],
    ],
  },
  {
    id: 'up-two-source-aiding-opposing-b',
    source:
      'University Physics, Volume 2 (OpenStax), web source as of June 2026, section 10.3, end-of-chapter Problem 37, parts (a) and (b)',
    reference: 'm',
    sources: [
      ['V1', 't', 'p', 1.6],
      ['V2', 'q', 't', 1.4],
    ],
    resistors: [
      ['R2', 'm', 'p', 1000],
      ['R1', 't', 'm', 2000],
      ['R3', 'm', 'q', 1000],
    ],
    printed: [
      ['current', 'R1', '0.04', 1000],
      ['current', 'R2', '1.52', 1000],
      ['current', 'R3', '-1.48', 1000],
    ],
  },
];
