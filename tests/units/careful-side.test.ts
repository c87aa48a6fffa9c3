import { expect, test } from 'vitest';
import { dimensions, kinds, type Kind } from '../../src-core/units/dimension.ts';

/** What somebody counts on: printed too low it errs to the careful side. */
const countedOn: readonly Kind[] = ['breaking strength', 'working limit', 'line pull', 'holding power', 'usable length', 'count', 'share', 'in diameters', 'time', 'pressure'];
/** What has to be borne, reached or kept away from: printed too high it errs to the careful side. */
const borne: readonly Kind[] = ['tension', 'load', 'weight', 'resistance', 'mass', 'needed length', 'distance', 'needed count', 'needed share', 'needed diameters', 'speed', 'energy'];

test('what is counted on is rounded down, what has to be borne is rounded up, the rest to the nearest', () => {
  for (const kind of countedOn) expect([kind, kinds[kind].careful]).toEqual([kind, 'down']);
  for (const kind of borne) expect([kind, kinds[kind].careful]).toEqual([kind, 'up']);
  for (const kind of Object.keys(kinds) as Kind[]) if (!countedOn.includes(kind) && !borne.includes(kind)) expect([kind, kinds[kind].careful]).toEqual([kind, 'nearest']);
});

test('every kind measures something that has a unit of its own', () => {
  for (const kind of Object.values(kinds)) expect(dimensions[kind.dimension].example).toMatch(/^[\d.,]+/);
});
