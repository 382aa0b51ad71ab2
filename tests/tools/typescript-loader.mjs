// Has Node load the TypeScript of this folder's project by itself (`node --import`). Vitest's own runner puts every import
// behind a getter, which costs the tests a quarter of their time.
import { register } from 'node:module';

register('./typescript-hooks.mjs', import.meta.url);
