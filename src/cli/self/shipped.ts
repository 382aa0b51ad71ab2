/** Files of the package itself, beside what is built or above the sources. */
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';

/** Where a file of the package lies, by its path from the top; undefined where it is not there. */
export function shipped(path: string): string | undefined {
  return [`../${path}`, `../../../${path}`]
    .map((from) => fileURLToPath(new URL(from, import.meta.url)))
    .find((file) => existsSync(file));
}

export async function readShipped(path: string): Promise<string> {
  const file = shipped(path);
  if (file === undefined) throw new Error(`${path} is missing from the package`);
  return readFile(file, 'utf8');
}
