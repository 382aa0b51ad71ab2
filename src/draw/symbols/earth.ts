/** The sign of earth: bars that grow shorter away from the lead; `direction` is that of the lead. */

import type { Point } from '../drawing.ts';
import { line } from '../strokes.ts';
export function earth(at: Point, direction: 1 | -1, size = 1): string {
  return [7, 4.5, 2]
    .map((height, index) => {
      const x = at.x + direction * index * 3 * size;
      return line([
        { x, y: at.y - height * size },
        { x, y: at.y + height * size },
      ]);
    })
    .join('');
}
