import { measures } from '../measures.ts';
import { at, choice, clause, count, defineBlock, flag, label, maybe, name, newName, note, quantity, statement, type Choices, type Part } from '../shape.ts';

export const materials: Choices = {
  HMPE: 'high-modulus polyethylene, the usual synthetic winch line: strong, slippery, melts early',
  polyester: 'polyester',
  nylon: 'nylon (polyamide): stretches, loses strength when wet',
  aramid: 'aramid',
  polypropylene: 'polypropylene',
  manila: 'manila',
  wire: 'steel wire rope',
};

export const constructions: Choices = {
  'hollow-braid': 'hollow (single) braid, usually of 12 strands: spliced by burying the tail in its own middle',
  'double-braid': 'a braided core in a braided cover',
  laid: 'three or four strands laid together',
  'wire-6x19': 'steel wire rope of six strands',
};

export const thimbles: Choices = {
  tube: 'tube thimble: a closed tube that keeps the eye round and off the pin',
  round: 'solid round thimble',
  heart: 'heart-shaped thimble with an open groove',
  sleeve: 'a chafe sleeve in the eye, no metal',
};

/** Values of an end or a splice. */
export const eyeParts: readonly Part[] = [
  maybe('thimble', 'what keeps the eye open', [choice('thimble', thimbles)]),
  maybe('bury', 'length of tail inside the line, its taper included', [quantity('bury', measures.bury)]),
  maybe('taper', 'how much of the buried tail is tapered', [quantity('taper', measures.taper)]),
  maybe('size', 'length of line around the eye, throat to throat', [quantity('size', measures.eyeSize)]),
  flag('locked', 'locked (Brummel): tail and standing part pass through each other'),
  flag('stitched', 'the throat is lock-stitched'),
  flag('tucked', 'short tucked splice: half of the strands are tucked'),
  maybe('holds', 'what this end breaks at, from its maker or a test', [quantity('holds', measures.breaking)]),
  flag('temporary', 'meant to be redone; falls due after the shop\'s time for temporary splices'),
];

export const endForms: Choices = {
  eye: 'a spliced eye',
  lug: 'a lug or crimped end that fastens to the drum',
  hook: 'a hook spliced or pressed on',
  bare: 'a plain cut end, whipped or taped',
  knot: 'a knotted end',
};

export const ends: Choices = {
  inboard: 'the end at the drum',
  outboard: 'the outer end, away from the drum',
};

export const damageKinds: Choices = {
  cut: 'strands cut through',
  abrasion: 'worn, fuzzy or flattened fibre',
  glaze: 'glazed fibre from heat; `hard` when it stays hard after flexing',
  melt: 'melted or fused fibre',
  pulled: 'a strand pulled out of the braid',
  flattened: 'flattened line',
  kink: 'a kink or a twist that stays',
  stain: 'chemical or unknown stain',
  brittle: 'discoloured and brittle fibre',
  'broken-wires': 'wire rope: six broken wires in one lay or three in one strand; fewer go into the note of `inspected`',
  rust: 'wire rope: deep rust or pits',
  birdcage: 'wire rope: strands that stand out',
};

export const severities: Choices = {
  light: 'surface fuzz, no strand clearly thinner',
  moderate: 'strands visibly thinner, less than a quarter of their volume gone',
  heavy: 'a quarter of the volume or more gone, or not possible to say',
};

const cut = (example: string) =>
  statement('cut', 'The line is cut here. What lies outboard of the cut is dropped unless it is kept under a name, or unless the end at the drum is dropped instead.', [
    at(),
    maybe('keep', 'the piece outboard of the cut stays in use under this name', [{ part: 'new-name', key: 'keep' }]),
    maybe('drop', 'what lies inboard of the cut is dropped; the rest goes on under the name of the line, and its inboard end is bare until it is spliced', [choice('drop', { inboard: ends.inboard! })]),
    maybe('of', 'the piece that is cut, when there are several', [name('piece', ['line', 'piece'])]),
    note(),
  ], example, { many: true });

const splice = (example: string) =>
  statement('splice', 'An end is spliced: which end, what it becomes, how much is buried and tapered.', [
    name('piece', ['line', 'piece'], { optional: true }),
    choice('end', ends),
    choice('form', endForms),
    ...eyeParts,
    flag('remade', 'the old splice of this end was drawn out before, and nothing was cut off'),
    note(),
  ], example, { many: true });

const join = (example: string) =>
  statement('join', 'Two pieces are spliced end to end; the joined line keeps the name of the inboard piece.', [
    name('piece', ['line', 'piece']),
    clause('to', 'the piece that is joined on, by its inboard end', [name('other', ['line', 'piece'])]),
    ...eyeParts.filter((p) => 'key' in p && ['bury', 'taper', 'stitched', 'temporary'].includes(p.key)),
    note(),
  ], example, { many: true });

const reversed = (example: string) =>
  statement('reversed', 'The line is turned end for end: what was outboard is now inboard.', [name('piece', ['line', 'piece'], { optional: true }), note()], example, { many: true });

/** What may be done to a line, dated in a logbook, undated in a repair. */
export const lineWork = { cut, splice, join, reversed };

export const lineBlock = defineBlock({
  head: 'line',
  summary: 'A winch line or an extension: what it is, how it ends, and its dated logbook.',
  header: [newName(), label()],
  statements: [
    statement('material', 'What the fibre is.', [choice('material', materials)], 'material  HMPE', { needed: 'bury, strength after damage' }),
    statement('construction', 'How the line is made. Twelve-strand hollow braid is the usual winch line.', [choice('construction', constructions)], 'construction  hollow-braid'),
    statement('strands', 'Number of strands in the braid.', [count('strands', 3, 48, ['strands'])], 'strands  12', { needed: 'strength after cut strands' }),
    statement('diameter', 'Nominal diameter of the line.', [quantity('diameter', measures.lineDiameter)], 'diameter  10 mm', { needed: 'layers on the drum, bury in diameters', foundOn: 'the tag or the spool' }),
    statement('length', 'Finished length, end to end, as it was fitted.', [quantity('length', measures.lineLength)], 'length  30 m', { needed: 'layers on the drum, reach, stations' }),
    statement('breaking', 'Breaking strength of new line, from the tag. Nothing stands in for it: without it no load on the line is judged.', [quantity('breaking', measures.breaking)], 'breaking  92 kN', { needed: 'every load on the line', foundOn: 'the tag or the maker\'s data' }),
    statement('working', 'Working limit (WLL) of the line, where its maker gives one.', [quantity('working', measures.lineWorking)], 'working  18 kN'),
    statement('inboard', 'How the end at the drum is made.', [choice('form', endForms), ...eyeParts], 'inboard  lug'),
    statement('outboard', 'How the outer end is made.', [choice('form', endForms), ...eyeParts], 'outboard  eye thimble tube bury 72 d taper 24 d'),
    statement('stored', 'Where the line lives between pulls.', [choice('stored', { outdoors: 'on the vehicle, in sun and weather', covered: 'on the vehicle, under a cover', indoors: 'in a bag or a shed' })], 'stored  covered'),
    statement('wet', 'The line is used wet (nylon is weaker wet).', [choice('wet', { yes: 'used wet', no: 'used dry only' })], 'wet  yes'),
  ],
  entries: [
    statement('fitted', 'The line is put on the winch, or taken into use.', [note()], '2025-04-02  fitted', { many: true }),
    statement('inspected', 'The line is inspected from end to end. `passed` says that its maker looked at it after an overload, and that it holds what it did; the note says who.', [name('piece', ['line', 'piece'], { optional: true }), flag('passed', 'its maker passed it for use after an overload'), note('what was seen, and by whom')], '2026-06-21  inspected  "outside in: fairlead scored on the lower lip"', { many: true }),
    statement('damage', 'Damage found: its kind, how bad, and where.', [
      choice('kind', damageKinds),
      count('strands', 1, 48, ['strands', 'strand'], { optional: true, nounNeeded: true }),
      quantity('share', measures.share, { optional: true }),
      choice('severity', severities, { optional: true }),
      choice('state', { hard: 'stays hard after flexing', soft: 'turns soft again after flexing' }, { optional: true }),
      at(true),
      maybe('of', 'the piece it was found on, when there are several', [name('piece', ['line', 'piece'])]),
      note(),
    ], '2026-06-21  damage  cut 2 strands at 8.4 m from inboard', { many: true }),
    cut('2026-06-28  cut  at 7.6 m from inboard'),
    splice('2026-06-28  splice  outboard eye thimble tube bury 72 d taper 24 d'),
    join('2026-06-28  join  main to tail bury 72 d taper 24 d'),
    statement('mended', 'A pulled strand is worked back into the braid, flattened line is worked round again, or glaze is flexed soft: the place is sound.', [
      choice('kind', { pulled: 'a pulled strand, worked back in', flattened: 'flattened line, worked round', glaze: 'soft glaze, flexed until it is gone' }),
      at(true),
      maybe('of', 'the piece it is on, when there are several', [name('piece', ['line', 'piece'])]),
      note(),
    ], '2026-06-22  mended  pulled at 12 m from inboard', { many: true }),
    statement('washed', 'The line is washed.', [name('piece', ['line', 'piece'], { optional: true }), note()], '2026-03-01  washed', { many: true }),
    reversed('2026-03-01  reversed'),
    statement('pulled', 'A pull worth remembering: its load.', [quantity('load', measures.pull), name('piece', ['line', 'piece'], { optional: true }), note()], '2026-02-14  pulled  31 kN', { many: true }),
    statement('heated', 'The line, or part of it, got hot.', [quantity('temperature', measures.temperature), at(true, { optional: true }), name('piece', ['line', 'piece'], { optional: true }), note()], '2026-02-14  heated  70 degC', { many: true }),
    statement('spooled', 'The line is wound onto the drum again.', [choice('tightness', { tight: 'under load, layer by layer', slack: 'without load' }), maybe('under', 'the load it was wound under', [quantity('load', measures.load)]), maybe('of', 'the piece that was wound on, when there are several', [name('piece', ['line', 'piece'])]), note()], '2026-02-14  spooled  tight under 230 kgf', { many: true }),
    statement('retired', 'The line or a piece is taken out of use for good.', [name('piece', ['line', 'piece'], { optional: true }), note('why')], '2026-09-01  retired  "melted at the fairlead"', { many: true }),
  ],
  example: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
  2025-04-02  fitted
}
`,
});
