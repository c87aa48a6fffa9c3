import { expect, test } from 'vitest';
import { makeRestartPolicy, restartWindow_ms } from '../../client/restart-policy.ts';

test('four restarts within the window, then none', () => {
  const policy = makeRestartPolicy(() => 0);
  expect([1, 2, 3, 4, 5, 6].map(() => policy.mayRestart())).toEqual([true, true, true, true, false, false]);
});

test('a stop now and then is always followed by a restart', () => {
  let time = 0;
  const policy = makeRestartPolicy(() => time);
  for (let stop = 0; stop < 50; stop++) {
    time += restartWindow_ms / 4;
    expect(policy.mayRestart()).toBe(true);
  }
});

test('asked for by a person, earlier stops are forgiven', () => {
  const policy = makeRestartPolicy(() => 0);
  while (policy.mayRestart());
  policy.forgive();
  expect(policy.mayRestart()).toBe(true);
});
