import { expect, test } from 'vitest';
import { soakServer } from './soak-server.ts';

test('after 300 edits and requests at random the server answers as a fresh one does', async () => {
  const { compared, differences, faults } = await soakServer({ steps: 300, files: 12, seed: 7, compareEvery: 100, kills: false });
  expect(differences).toEqual([]);
  expect(faults).toEqual([]);
  expect(compared).toBeGreaterThan(500);
}, 120_000);
