/** What a quantity measures. Mass and force are different; `diameters` are lengths that wait for a line's diameter. */
export const dimensions = {
  length: { si: 'm', example: '8.4 m' },
  diameters: { si: 'd', example: '72 d' },
  mass: { si: 'kg', example: '2,650 kg' },
  force: { si: 'N', example: '42 kN' },
  angle: { si: 'rad', example: '12 deg' },
  time: { si: 's', example: '30 days' },
  speed: { si: 'm/s', example: '4 m/min' },
  temperature: { si: 'K', example: '65 degC' },
  ratio: { si: '', example: '25 %' },
  count: { si: '', example: '10' },
  energy: { si: 'J', example: '12 kJ' },
  area: { si: 'm²', example: '0.4 m2' },
  pressure: { si: 'Pa', example: '950 lb/ft2' },
  stiffness: { si: 'N/m', example: '120 kN/m' },
  'linear-density': { si: 'kg/m', example: '62 g/m' },
} as const;

export type Dimension = keyof typeof dimensions;

/**
 * What a number is for. Breaking strength, working limit and line pull are all forces and are not the same thing:
 * comparing or replacing one by another needs a factor and a reason.
 */
export const kinds = {
  'breaking strength': { dimension: 'force', careful: 'down' },
  'working limit': { dimension: 'force', careful: 'down' },
  'line pull': { dimension: 'force', careful: 'down' },
  tension: { dimension: 'force', careful: 'up' },
  load: { dimension: 'force', careful: 'up' },
  weight: { dimension: 'force', careful: 'up' },
  resistance: { dimension: 'force', careful: 'up' },
  'holding power': { dimension: 'force', careful: 'down' },
  mass: { dimension: 'mass', careful: 'up' },
  length: { dimension: 'length', careful: 'nearest' },
  'needed length': { dimension: 'length', careful: 'up' },
  'usable length': { dimension: 'length', careful: 'down' },
  distance: { dimension: 'length', careful: 'up' },
  diameter: { dimension: 'length', careful: 'nearest' },
  area: { dimension: 'area', careful: 'nearest' },
  angle: { dimension: 'angle', careful: 'nearest' },
  count: { dimension: 'count', careful: 'down' },
  'needed count': { dimension: 'count', careful: 'up' },
  share: { dimension: 'ratio', careful: 'down' },
  'needed share': { dimension: 'ratio', careful: 'up' },
  ratio: { dimension: 'ratio', careful: 'nearest' },
  'in diameters': { dimension: 'diameters', careful: 'down' },
  'needed diameters': { dimension: 'diameters', careful: 'up' },
  time: { dimension: 'time', careful: 'down' },
  speed: { dimension: 'speed', careful: 'up' },
  temperature: { dimension: 'temperature', careful: 'nearest' },
  energy: { dimension: 'energy', careful: 'up' },
  pressure: { dimension: 'pressure', careful: 'down' },
  stiffness: { dimension: 'stiffness', careful: 'nearest' },
  'linear density': { dimension: 'linear-density', careful: 'nearest' },
} as const satisfies Record<string, { dimension: Dimension; careful: Careful }>;

export type Kind = keyof typeof kinds;

/** Which way a printed number is rounded so that it errs to the careful side. */
export type Careful = 'up' | 'down' | 'nearest';
