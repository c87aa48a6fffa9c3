import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 30_000,
    // Programs that a test starts keep nothing in the home folder of whoever runs it.
    env: { LINEWRIGHT_CACHE: 'off' },
    // One process each core: left to itself the runner keeps one core back, which on two cores is half of them.
    maxWorkers: '100%',
  },
});
