import type { Measure } from './shape.ts';

// Limits are of absurdity, not of practice: beyond them a digit or a unit is wrong. Least loads catch a thousand that
// somebody wrote with a point: `9.500 lbf` is 42 N.
const kN = 1000;

export const measures = {
  vehicleMass: { kind: 'mass', min: 50, max: 100_000, example: '2,650 kg' },
  linePull: { kind: 'line pull', load: true, min: 500, max: 1000 * kN, example: '42 kN' },
  breaking: { kind: 'breaking strength', load: true, min: 500, max: 10_000 * kN, example: '92 kN' },
  working: { kind: 'working limit', load: true, min: 250, max: 10_000 * kN, example: '4.7 t' },
  lineWorking: { kind: 'working limit', load: true, min: 500, max: 10_000 * kN, example: '18 kN' },
  load: { kind: 'load', load: true, above: 0, max: 10_000 * kN, example: '31 kN' },
  weight: { kind: 'load', load: true, min: 490, max: 10_000 * kN, example: '2,650 kg' },
  pull: { kind: 'load', load: true, min: 100, max: 10_000 * kN, example: '31 kN' },
  holding: { kind: 'holding power', load: true, above: 0, max: 10_000 * kN, example: '30 kN' },
  lineLength: { kind: 'length', above: 0, max: 2000, example: '30 m' },
  gearLength: { kind: 'length', above: 0, max: 200, example: '3 m' },
  distance: { kind: 'length', min: 0, max: 2000, example: '21 m' },
  lineDiameter: { kind: 'diameter', above: 0, max: 0.1, example: '10 mm' },
  bodyDiameter: { kind: 'diameter', above: 0, max: 0.3, example: '22 mm' },
  drumDiameter: { kind: 'diameter', above: 0, max: 2, example: '64 mm' },
  flangeDiameter: { kind: 'diameter', above: 0, max: 2, example: '165 mm' },
  drumWidth: { kind: 'length', above: 0, max: 3, example: '230 mm' },
  sheaveDiameter: { kind: 'diameter', above: 0, max: 1, example: '100 mm' },
  gearWidth: { kind: 'length', above: 0, max: 1, example: '50 mm' },
  girth: { kind: 'length', above: 0, max: 30, example: '1.3 m' },
  bury: { kind: 'length', diameters: true, above: 0, max: 20, example: '72 d' },
  taper: { kind: 'length', diameters: true, above: 0, max: 20, example: '24 d', below: 'leave `taper` out: a tail without one is counted as blunt' },
  // 40 d of the thickest line.
  eyeSize: { kind: 'length', diameters: true, above: 0, max: 4, example: '150 mm' },
  angle: { kind: 'angle', min: 0, max: Math.PI, example: '30 deg' },
  grade: { kind: 'angle', share: true, min: 0, max: Math.PI / 2, example: '12 deg', below: 'a pull downhill is written `level`, for the slope helps it and is not counted; a load that hangs on the line and is let down is not worked out here, and `level` is wrong for it' },
  share: { kind: 'share', min: 0, max: 1, example: '40 %' },
  factor: { kind: 'share', above: 0, max: 1, example: '90 %' },
  life: { kind: 'time', above: 0, max: 3.2e9, example: '30 days' },
  runTime: { kind: 'time', above: 0, max: 86_400, example: '3 min' },
  lineSpeed: { kind: 'speed', above: 0, max: 5, example: '4 m/min' },
  temperature: { kind: 'temperature', min: 200, max: 2000, example: '65 degC' },
  diameters: { kind: 'needed diameters', diameters: true, above: 0, max: 500, example: '72 d' },
  depth: { kind: 'length', min: 0, max: 20, example: '1.2 m' },
} as const satisfies Record<string, Measure>;
