/** Labels, one for each end of each core, to be copied or cut out. */
import type { WireList } from '../lists/wirelist-model.ts';
import { type Block, heading, list, paragraph, table } from './blocks.ts';

export const LABELS = 'Labels, one for each end of each core; the terminal is the one that end lands on.';

export function labelBlocks(wires: WireList): Block[] {
  return [
    heading(2, 'Labels', { plain: '', only: ['text', 'markdown'] }),
    paragraph(LABELS),
    list(
      'indent',
      wires.labels.map((l) => l.text),
      { only: ['text'], close: true },
    ),
    { ...labelTable(wires), only: ['markdown'] },
  ];
}

/** Every label as a row, by the wire and the end it belongs to. */
export function labelTable({ labels }: WireList): Block {
  return table(labels, [
    { head: 'wire', of: (l) => `${l.wire}` },
    { head: 'end', of: (l) => l.end },
    { head: 'label', of: (l) => l.text },
  ]);
}
