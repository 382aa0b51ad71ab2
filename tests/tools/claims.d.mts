export function isoDay(ms: number): string;
export function claimedFiles(root: string): string[];
export function testsWritten(root: string, file: string): number;
export function howWeKnow(root: string): string;
