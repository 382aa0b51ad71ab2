/** The text of a right plan of so many gates, wired as a chain or as a star. */
export function planOf(count: number, wiring: 'chain' | 'star'): string;
