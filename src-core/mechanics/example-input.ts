import { dimensions, kinds, type Kind } from '../units/dimension.ts';
import type { SymbolDefinition } from './define-calculation.ts';

/** What is usual for a kind; a dimension alone would give a line the diameter of a boat. */
const ofKind: Partial<Record<Kind, string>> = {
  'breaking strength': '92 kN',
  'working limit': '18 kN',
  load: '31 kN',
  resistance: '9 kN',
  weight: '26 kN',
  'holding power': '40 kN',
  tension: '30 kN',
  diameter: '10 mm',
  'needed length': '720 mm',
  'usable length': '20 m',
  distance: '21 m',
  'needed count': '3',
};

/** Where the kind takes in things of very different sizes, the meaning tells them apart. */
const ofMeaning: Partial<Record<Kind, readonly (readonly [RegExp, string])[]>> = {
  diameter: [[/^flange/, '165 mm'], [/^barrel/, '64 mm'], [/^pin diameter/, '22 mm'], [/nominal size/, '3/4 in'], [/^body|shackle/, '19 mm'], [/groove|bears on/, '100 mm'], [/face/, '30 cm']],
  length: [[/^width/, '230 mm'], [/^depth of line/, '30 mm'], [/^bury/, '720 mm'], [/^taper/, '240 mm'], [/\beye\b/, '150 mm'], [/^offset/, '115 mm'], [/line length|start with|finished/, '30 m']],
  'needed length': [[/^freeboard/, '10 mm'], [/taper/, '210 mm'], [/kept wraps/, '2.5 m']],
  'usable length': [[/of the log$/, '1.5 m']],
  distance: [[/^depth/, '0.5 m'], [/^stretch/, '0.6 m']],
  count: [[/friction/, '0.12'], [/layer/, '2'], [/parts|advantage|lines that/, '2'], [/design factor/, '5'], [/cut strands/, '2'], [/^strands of/, '12'], [/pair/, '1'], [/soil/, '1'], [/run of the pull/, '3'], [/bend ratio/, '8']],
  'needed count': [[/wraps/, '10'], [/parts|lines that/, '2'], [/design factor/, '5']],
  mass: [[/flies/, '2 kg']],
  time: [[/outdoors|observed/, '2 years'], [/run/, '3 min']],
  angle: [[/lies on the drum/, '1,080 deg'], [/fleet/, '1.5 deg'], [/strands/, '30 deg'], [/leg|parts/, '60 deg']],
  area: [[/floor/, '2.8 m2']],
};

/** An example of what may be given for a symbol of a calculation. */
export const exampleInput = ({ kind, meaning }: Pick<SymbolDefinition, 'kind' | 'meaning'>): string =>
  ofMeaning[kind]?.find(([means]) => means.test(meaning))?.[1] ?? ofKind[kind] ?? dimensions[kinds[kind].dimension].example;
