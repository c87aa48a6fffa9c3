import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { generatedFiles } from '../scripts/generated-files.ts';

const files = [...(await generatedFiles())];

test.each(files)('%s is what `npm run generate` would write', (path, bytes) => {
  expect(readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8')).toBe(bytes.toString('utf8'));
});
