/** Why pieces of cable cannot be cut from the reels there are. */
import { printable } from '../text/escape.ts';
import { cutWords } from '../text/lengths.ts';
import type { TooLong } from './wirelist.ts';

export function tooLongText({ cable, run, piece, reel, unit }: TooLong): string {
  return `${printable(cable)}: the piece of ${run} is ${cutWords(piece, unit)} long, slack included, and the longest reel is ${cutWords(reel, unit)}; it cannot be cut in one piece`;
}
