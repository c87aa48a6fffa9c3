import { measures } from '../measures.ts';
import { choice, count, defineBlock, label, maybe, newName, note, quantity, statement, type Choices, type StatementDefinition } from '../shape.ts';
import { materials } from './line.ts';

const wll = (example: string, where = 'the marking on it'): StatementDefinition =>
  statement('wll', 'Working load limit that its maker gives.', [quantity('wll', measures.working)], `wll  ${example}`, { needed: 'every load on it', foundOn: where });
const breaking = (example: string): StatementDefinition =>
  statement('breaking', 'Breaking strength that its maker gives.', [quantity('breaking', measures.breaking)], `breaking  ${example}`);
const marking = statement('marking', 'Whether the rating can still be read on it.', [choice('marking', { legible: 'the rating can be read', faded: 'the rating cannot be read any more', none: 'it never carried one' })], 'marking  legible');
const inside = statement('inside', 'Inside width or diameter that another part must pass.', [quantity('inside', measures.gearWidth)], 'inside  40 mm');
const body = statement('body', 'Diameter of its material.', [quantity('body', measures.bodyDiameter)], 'body  16 mm');

/** Damage for which steel gear is taken out of service, and what else there is on some of it. */
const steelDamage = (more: Choices = {}): StatementDefinition =>
  statement('damage', 'Damage found on it.', [choice('damage', {
    bent: 'bent, twisted or stretched', cracked: 'cracked or broken', worn: 'worn or gouged: a tenth of a dimension or more is gone', corroded: 'deep pits of corrosion', heated: 'marks of heat, arc or weld', ...more,
  })], 'damage  bent', { many: true });
const pinDamage: Choices = { thread: 'damaged thread, or a pin that does not go home' };

export const standards = {
  'AS-2741': 'AS 2741 grade S',
  'RR-C-271': 'RR-C-271 grade A',
};

export const shackleForms = { bow: 'bow (anchor) shackle: round, takes loads from several directions', dee: 'dee (chain) shackle: straight, in-line loads only' };

export const shackleBlock = defineBlock({
  head: 'shackle',
  summary: 'A steel shackle.',
  header: [newName(), label()],
  statements: [
    statement('form', 'Its form.', [choice('form', shackleForms)], 'form  bow'),
    statement('body', 'Diameter of the body (the size that is spoken of).', [quantity('body', measures.bodyDiameter)], 'body  19 mm'),
    statement('pin', 'Diameter of the pin.', [quantity('pin', measures.bodyDiameter)], 'pin  22 mm', { needed: 'bend of a line over the pin' }),
    wll('4.7 t'),
    breaking('28 t'),
    statement('made-to', 'The standard it is made and marked to; its table gives the working limit when none is written.', [choice('standard', standards)], 'made-to  AS-2741'),
    inside,
    steelDamage(pinDamage),
    marking,
    statement('load-from', 'Angle between the pull and the shackle\'s own line.', [quantity('angle', measures.angle)], 'load-from  45 deg'),
  ],
  example: `shackle bow-22 {
  form  bow
  body  22 mm
  pin   25 mm
  wll   6.5 t
}
`,
});

export const softShackleBlock = defineBlock({
  head: 'soft-shackle',
  summary: 'A soft shackle of fibre line.',
  header: [newName(), label()],
  statements: [
    statement('material', 'What the fibre is.', [choice('material', materials)], 'material  HMPE'),
    statement('diameter', 'Diameter of the line it is made of.', [quantity('diameter', measures.lineDiameter)], 'diameter  11 mm'),
    wll('6 t', 'its label'),
    breaking('140 kN'),
    statement('line-breaking', 'Breaking strength of the line it is made of.', [quantity('line-breaking', measures.breaking)], 'line-breaking  110 kN'),
    statement('damage', 'Damage found on it.', [choice('damage', { cut: 'cut strands', worn: 'worn fibre', melted: 'melted or hard glazed fibre', chemical: 'chemical or unknown stain' })], 'damage  cut', { many: true }),
    marking,
  ],
  example: `soft-shackle loop-11 {
  diameter  11 mm
  breaking  140 kN
}
`,
});

export const strapBlock = defineBlock({
  head: 'strap',
  summary: 'A strap or sling: round an anchor, or as an extension.',
  header: [newName(), label()],
  statements: [
    statement('kind', 'What it is made for.', [choice('kind', { static: 'does not stretch: tree strap, winch extension', kinetic: 'stretches to store energy: not for a winch pull' })], 'kind  static', { foundOn: 'its label' }),
    statement('material', 'What the fibre is.', [choice('material', materials)], 'material  polyester'),
    statement('length', 'Its length.', [quantity('length', measures.gearLength)], 'length  3 m'),
    statement('width', 'Its width.', [quantity('width', measures.gearWidth)], 'width  75 mm'),
    wll('4 t', 'its label'),
    breaking('12 t'),
    statement('hitch', 'How it goes round what it holds.', [choice('hitch', { straight: 'end to end', basket: 'both ends in one shackle, the load in the bight', choker: 'through its own eye' }), maybe('wll', 'working limit in that hitch, where its label gives one; a choker counts half without', [quantity('wll', measures.working)])], 'hitch  basket'),
    statement('damage', 'Damage found on it.', [choice('damage', { cut: 'cut webbing', melted: 'melted or charred', stitching: 'broken stitching', chemical: 'chemical burn', knotted: 'knotted', worn: 'worn face' })], 'damage  stitching', { many: true }),
    marking,
  ],
  example: `strap trunk {
  length  3 m
  wll     4 t
}
`,
});

export const pulleyBlock = defineBlock({
  head: 'block',
  summary: 'A pulley block or a fairlead ring that turns a line.',
  header: [newName(), label()],
  statements: [
    statement('sheave', 'Diameter of the sheave at the groove.', [quantity('sheave', measures.sheaveDiameter)], 'sheave  100 mm', { needed: 'bend of the line' }),
    statement('bearing', 'How the sheave turns.', [choice('bearing', { plain: 'on a plain pin or bush', roller: 'on rollers or balls', ring: 'it does not turn: the line slides over it' })], 'bearing  plain'),
    statement('efficiency', 'Share of the tension that is left behind the block, measured.', [quantity('efficiency', measures.factor)], 'efficiency  92 %'),
    statement('takes', 'Largest line diameter it takes.', [quantity('takes', measures.lineDiameter)], 'takes  12 mm', { foundOn: 'the marking on it or the maker\'s data' }),
    wll('8 t'),
    breaking('16 t'),
    steelDamage({ sheave: 'the sheave wobbles, stands out of line or is grooved', loose: 'a nut, bolt or pin is loose or missing' }),
    marking,
  ],
  example: `block snatch {
  sheave  100 mm
  wll     8 t
}
`,
});

export const ringBlock = defineBlock({
  head: 'ring',
  summary: 'A ring or link that joins gear.',
  header: [newName(), label()],
  statements: [inside, body, wll('5 t'), breaking('20 t'), steelDamage(), marking],
  example: `ring master {
  body  16 mm
  wll   5 t
}
`,
});

export const hookBlock = defineBlock({
  head: 'hook',
  summary: 'A hook at the end of a line or a chain.',
  header: [newName(), label()],
  statements: [
    statement('latch', 'Whether its latch closes.', [choice('latch', { closes: 'the latch closes by itself', broken: 'the latch is bent or missing', none: 'made without a latch' })], 'latch  closes'),
    inside, body, wll('4 t'), breaking('16 t'), steelDamage(), marking,
  ],
  example: `hook clevis {
  latch  closes
  wll    4 t
}
`,
});

export const thimbleBlock = defineBlock({
  head: 'thimble',
  summary: 'A thimble, spare or in an eye.',
  header: [newName(), label()],
  statements: [
    statement('groove', 'Diameter of the groove: what the line is bent round.', [quantity('groove', measures.sheaveDiameter)], 'groove  40 mm'),
    statement('takes', 'Line diameter that it takes.', [quantity('takes', measures.lineDiameter)], 'takes  10 mm'),
    inside,
  ],
  example: `thimble tube-10 {
  groove  40 mm
  takes   10 mm
}
`,
});

export const kitBlock = defineBlock({
  head: 'kit',
  summary: 'What is in the bag.',
  header: [newName(), label()],
  statements: [
    statement('holds', 'A tool or a part in the bag.', [
      count('number', 1, 1000, undefined, { optional: true }),
      choice('item', {
        fid: 'fid or pusher for burying a tail', tape: 'slippery tape without glue marks, such as packing tape', marker: 'marker for the rope', blade: 'sharp blade', thimble: 'spare thimble',
        gloves: 'gloves', damper: 'line damper', needle: 'needle and whipping twine', rule: 'tape measure', shackle: 'shackle', 'soft-shackle': 'soft shackle', strap: 'strap', block: 'pulley block', sleeve: 'chafe sleeve', shovel: 'shovel', radio: 'radio',
      }),
      maybe('for', 'the line diameter or body size it fits', [quantity('for', measures.bodyDiameter)]),
      note(),
    ], 'holds  fid for 10 mm', { many: true }),
    statement('carries', 'A piece of gear of this file that is in the bag.', [{ part: 'name', key: 'gear', of: ['shackle', 'soft-shackle', 'strap', 'block', 'ring', 'hook', 'thimble', 'line', 'piece'] }], 'carries  bow-22', { many: true }),
  ],
  example: `kit bag {
  holds  fid for 10 mm
  holds  tape
}
`,
});
