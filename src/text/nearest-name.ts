/** Finding the valid name a person most likely meant. */
import { asPrinted } from './alike.ts';

/** Longest text compared; anything longer is no slip of the finger. */
const LONGEST = 40;
/** Most names looked at. */
const MOST_NAMES = 2000;

/** Edit distance with neighbouring letters swapped counted as one slip, ignoring case; gives up past `most`. */
function editDistance(left: string, right: string, most = 3): number {
  const a = left.toLowerCase();
  const b = right.toLowerCase();
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    let least = row;
    for (let column = 1; column <= b.length; column++) {
      const same = a[row - 1] === b[column - 1];
      let cost = Math.min(
        previous[column]! + 1,
        current[column - 1]! + 1,
        previous[column - 1]! + (same ? 0 : 1),
      );
      if (row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1]) {
        cost = Math.min(cost, before[column - 2]! + 1);
      }
      current[column] = cost;
      least = Math.min(least, cost);
    }
    if (least > most) return most + 1;
    before = previous;
    previous = current;
  }
  return previous[b.length]!;
}

/** The closest of `names`, or undefined when none is near; of equally near ones the first. */
export function nearest(found: string, names: Iterable<string>): string | undefined {
  if (found === '' || found.length > LONGEST) return undefined;
  // One character is no slip of another name: `1` is none of `A1`, it is a part of `1/L1`.
  if (found.length === 1)
    return [...names].slice(0, MOST_NAMES).find((name) => name.split('/').includes(found));
  const allowed = found.length <= 2 ? 1 : found.length <= 5 ? 2 : 3;
  let best: string | undefined;
  let least = allowed + 1;
  let looked = 0;
  for (const name of names) {
    if (++looked > MOST_NAMES) break;
    const distance = editDistance(found, name, least);
    if (distance < least && distance < Math.max(found.length, name.length)) {
      least = distance;
      best = name;
    }
    if (least === 0) break;
  }
  return best;
}

/** `; did you mean X?`, or nothing. */
export function hint(found: string, names: Iterable<string>): string {
  const all = [...names].slice(0, MOST_NAMES);
  const printed = asPrinted(found);
  const alike = all.find((one) => one !== found && asPrinted(one) === printed);
  if (alike !== undefined)
    return `; ${alike} prints alike but is made of other characters: copy its name from where it stands`;
  const name = nearest(found, all);
  return name === undefined ? '' : `; did you mean ${name}?`;
}
