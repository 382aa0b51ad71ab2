/**
 * Elements of the page by what they stand for: this folder knows which element shows what, and must not know circuits.
 * Names of parts are compared, never put into a selector.
 */

export function byId(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`the page has no #${id}`);
  return found;
}

/** Whether an element belongs to one of the plans of the page, or to all of them. */
export function isOf(as: string, element: Element): boolean {
  const own = element.closest('[data-as]')?.getAttribute('data-as');
  return own == null || own === as;
}

/** All elements with a data attribute (`data-NAME`), by its value; `as` leaves out those of another plan. */
export function byData(name: string, within: ParentNode = document, as?: string): Map<string, HTMLElement[]> {
  const found = new Map<string, HTMLElement[]>();
  for (const element of within.querySelectorAll<HTMLElement>(`[data-${name}]`)) {
    if (as !== undefined && !isOf(as, element)) continue;
    const value = element.getAttribute(`data-${name}`) ?? '';
    found.set(value, [...(found.get(value) ?? []), element]);
  }
  return found;
}

/** Puts words into the cell of a row; the row is marked where they say that something is wrong. */
export function fill(row: HTMLElement, name: string, words: string, wrong = false): void {
  const cell = row.querySelector<HTMLElement>(`[data-cell="${name}"]`);
  if (cell === null) return;
  if (cell.textContent !== words) cell.textContent = words;
  cell.classList.toggle('wrong', wrong);
}
