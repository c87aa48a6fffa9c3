import { globSync, readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';

/** Tests that add to what a module keeps for all (a calculation, a rule), or put another module in its place: nobody else may see that. */
const alone = globSync('tests/**/*.test.ts').filter((path) => /\b(?:define[A-Z]\w*|vi\.\w+)[<(]/.test(readFileSync(path, 'utf8')));

export default defineConfig({
  test: {
    testTimeout: 30_000,
    // Programs that a test starts keep nothing in the home folder of whoever runs it.
    env: { LINEWRIGHT_CACHE: 'off' },
    // One process each core: left to itself the runner keeps one core back, which on two cores is half of them.
    maxWorkers: '100%',
    projects: [
      // Modules are loaded once for all of them, which takes a fifth off the whole.
      { extends: true, test: { name: 'together', include: ['tests/**/*.test.ts'], exclude: alone, isolate: false } },
      { extends: true, test: { name: 'alone', include: alone } },
    ],
  },
});
