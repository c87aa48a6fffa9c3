import { measures } from '../measures.ts';
import { defineBlock, label, maybe, newName, quantity, statement } from '../shape.ts';

export const vehicleBlock = defineBlock({
  head: 'vehicle',
  summary: 'A vehicle: its mass as it stands, and its recovery points with their ratings.',
  header: [newName(), label()],
  statements: [
    statement('mass', 'Mass as it stands, load and crew included.', [quantity('mass', measures.vehicleMass)], 'mass  2,650 kg', { needed: 'resistance, holding power as an anchor', foundOn: 'a weighbridge ticket' }),
    statement('point', 'A recovery point, by name, with its rating.', [
      newName(),
      maybe('rated', 'working limit that its maker gives', [quantity('rated', measures.working)]),
      maybe('breaking', 'breaking strength, where that is what is given', [quantity('breaking', measures.breaking)]),
      maybe('opening', 'inside width that a shackle body must pass', [quantity('opening', measures.gearWidth)]),
    ], 'point  bow rated 4.7 t', { many: true }),
  ],
  example: `vehicle plover "flatbed, loaded" {
  mass   2,650 kg
  point  bow rated 4.7 t
}
`,
});
