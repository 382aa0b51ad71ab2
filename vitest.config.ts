import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    // A test that hangs is stopped; one on a busy machine is not.
    testTimeout: 60_000,
    setupFiles: ['tests/setup.ts'],
  },
});
