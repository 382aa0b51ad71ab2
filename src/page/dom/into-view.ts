/** Scrolling, at once for those who want no motion. */
export function intoView(element: Element): void {
  const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
  element.scrollIntoView({ behavior: still ? 'auto' : 'smooth', block: 'center', inline: 'center' });
}
