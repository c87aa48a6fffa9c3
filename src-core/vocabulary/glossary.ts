/** A word of the trade as this language uses it. */
export interface GlossaryTerm {
  readonly term: string;
  /** Other words for the same thing. */
  readonly also?: readonly string[];
  readonly means: string;
  /** How well a figure or a usage in the definition is known, where that needs saying. */
  readonly known?: 'common practice' | 'from memory, not re-read' | 'our own word';
}

const group = (terms: readonly GlossaryTerm[]): readonly GlossaryTerm[] => terms;

const drum = group([
  { term: 'drum', means: 'the spool of a winch: a barrel between two flanges' },
  { term: 'barrel', means: 'the bare cylinder of a drum, on which the first layer lies' },
  { term: 'flange', means: 'the disc at either end of a drum that keeps the line on it' },
  { term: 'layer', means: 'all wraps that lie at the same height on a drum, counted from the barrel; each layer lies on a larger diameter, so the winch pulls less and faster on it' },
  { term: 'wrap', also: ['turn'], means: 'one turn of line around the drum' },
  { term: 'kept wraps', also: ['dead wraps'], means: 'wraps that always stay on the barrel: their friction holds the line, and the fastening alone does not hold a pull' },
  { term: 'freeboard', means: 'how far the flange stands above the outermost layer' },
  { term: 'line out', means: 'the length of line that has left the drum' },
  { term: 'reach', means: 'the distance along the line between what stands and what moves' },
  { term: 'line pull', means: 'the force a winch puts into a single line; a rating means the first layer unless it says otherwise' },
  { term: 'fleet angle', means: 'the angle between the line and the middle of the drum, seen from above; too large, the line piles up at a flange' },
  { term: 'dive', means: 'an outer wrap pulling down between loose inner ones, where it jams and is cut' },
  { term: 'spool', means: 'to wind line onto the drum; tight when that is done under load, layer by layer' },
  { term: 'fairlead', means: 'what guides the line onto the drum: a smooth slot (hawse) or rollers' },
  { term: 'duty', means: 'how long a winch may run at full load, and how long it then rests' },
]);

const line = group([
  { term: 'line', also: ['rope'], means: 'the rope of a winch, or an extension of it' },
  { term: 'HMPE', also: ['UHMWPE'], means: 'high-modulus polyethylene: the fibre of the usual synthetic winch line; strong and light, slippery, and weak long before it melts' },
  { term: 'hollow braid', also: ['single braid'], means: 'strands braided into a tube without a core, so that a tail can be buried in its own middle' },
  { term: 'strand', means: 'one of the bundles of yarn that a line is braided or laid of' },
  { term: 'inboard', means: 'towards the drum' },
  { term: 'outboard', means: 'away from the drum' },
  { term: 'standing part', means: 'the line between its ends that carries the load; the part a tail is buried in' },
  { term: 'tail', means: 'the free end of a line that is worked into a splice' },
  { term: 'piece', means: 'a length of line with a name of its own, made by cutting', known: 'our own word' },
  { term: 'end for end', means: 'turning a line round, so that what was outboard comes to lie on the drum' },
  { term: 'breaking strength', also: ['MBL', 'MBS'], means: 'the least force at which new gear breaks in its maker\'s test' },
  { term: 'working load limit', also: ['WLL', 'working limit'], means: 'the greatest load that the maker of gear allows in use' },
  { term: 'design factor', means: 'breaking strength divided by working load limit' },
  { term: 'line factor', means: 'breaking strength of a line, as it is today, divided by the greatest pull it is used with', known: 'our own word' },
  { term: 'abrasion', means: 'wear that takes fibre from the outside of the strands' },
  { term: 'glaze', means: 'a shiny skin of fibre that got hot; it may turn soft again when the line is flexed' },
  { term: 'pulled strand', means: 'a strand drawn out of the braid in a loop, so that it no longer shares the load' },
  { term: 'creep', means: 'slow lengthening of fibre under a steady load that does not go back' },
  { term: 'diameters (d)', means: 'a length counted in diameters of the line that is spoken of: 72 d of a 10 mm line is 720 mm' },
  { term: 'fid', means: 'a tool that leads a tail into the middle of a hollow braid; as a measure, 21 diameters of the line' },
]);

const splice = group([
  { term: 'splice', means: 'an end worked back into the line, or into another, so that it holds without a knot' },
  { term: 'eye', means: 'a spliced loop at the end of a line' },
  { term: 'bury', means: 'the length of tail inside the line, from the throat to its tip, the taper included' },
  { term: 'taper', means: 'the last part of the bury, where strands are taken out by and by so that the line does not step down at once' },
  { term: 'throat', means: 'where the eye closes and the tail goes into the line' },
  { term: 'entry mark, exit mark', means: 'the marks, measured from the cut end, at which the tail goes into the standing part and at which its tip would come out' },
  { term: 'lock-stitch', means: 'whipping twine sewn through the throat and back, so that a slack splice does not creep open' },
  { term: 'locked eye', also: ['Brummel'], means: 'an eye in which tail and standing part pass through each other before the tail is buried' },
  { term: 'tucked splice', means: 'a short splice in which part of the tail\'s strands are tucked through the line instead of buried' },
  { term: 'end-to-end splice', means: 'two lines joined by burying the tail of each in the other' },
  { term: 'temporary splice', means: 'a splice made short in the field, to be made again in full by a day that is written down', known: 'common practice' },
  { term: 'shortening', means: 'what a line loses in length where a buried tail makes it thicker' },
  { term: 'finished length', means: 'the length of a line from end to end once every splice is made' },
  { term: 'thimble', means: 'a lining that keeps an eye round and off the pin' },
  { term: 'lug', means: 'a terminal pressed on the end of a line by which the drum holds it' },
  { term: 'whipping', means: 'twine bound round a cut end so that its strands do not come apart' },
]);

const gear = group([
  { term: 'shackle', means: 'a U of steel closed by a pin; a bow shackle is round and takes loads from several directions, a dee is straight and takes them in line only' },
  { term: 'soft shackle', means: 'a loop of fibre line that is closed by its own knot' },
  { term: 'side load', means: 'a pull on a shackle at an angle to its own line; it lowers the working load limit' },
  { term: 'D/d', means: 'the diameter of what a line is bent round, divided by the diameter of the line' },
  { term: 'rope on rope', also: ['girth hitch'], means: 'one eye bearing straight on another, with nothing round and smooth between; no published figure says what is left of the strength', known: 'common practice' },
  { term: 'block', also: ['pulley', 'snatch block'], means: 'a sheave in a frame that turns a line; a snatch block opens at the side' },
  { term: 'sheave', means: 'the wheel of a block' },
  { term: 'strap', also: ['sling'], means: 'a flat or round length of webbing: static when it hardly stretches, kinetic when it is made to' },
  { term: 'basket', means: 'a strap laid under or round something with both ends in one shackle' },
  { term: 'choker', also: ['choker hitch'], means: 'a strap or sling passed through its own eye; it holds half of what it holds straight' },
  { term: 'damper', means: 'something soft and heavy laid on a loaded line, to bring it down when it breaks', known: 'common practice' },
  { term: 'recovery point', means: 'a place on a vehicle that its maker rates for a pull' },
]);

const pull = group([
  { term: 'resistance', means: 'the force that a load puts against being moved: ground, slope, mire, dragging wheels, water' },
  { term: 'mired', means: 'sunk into soft ground; the depth decides how many times the weight is needed' },
  { term: 'grade', means: 'how steep the way is, as an angle or as rise over run' },
  { term: 'part', means: 'one stretch of line between two blocks, or between a block and an end' },
  { term: 'tackle', means: 'a line rove through blocks so that several parts pull on the load' },
  { term: 'fixed block', means: 'a block made fast to what stands: it turns the line and adds no pull' },
  { term: 'travelling block', means: 'a block made fast to the load: it moves with it, and each of its parts pulls' },
  { term: 'fall line', means: 'the part of a tackle that runs to the winch' },
  { term: 'dead line', means: 'a line or part that carries load and does not run' },
  { term: 'bridle', means: 'two legs from one line to two points; the wider the angle between them, the more each carries' },
  { term: 'load path', means: 'every link from the winch to the anchor, with the load that each carries' },
  { term: 'chain', means: 'what hangs on what, in order, from a line to an anchor or a load', known: 'our own word' },
  { term: 'weakest link', means: 'the link of a load path that is nearest to its limit' },
  { term: 'anchor', means: 'what the far end is made fast to' },
  { term: 'deadman', also: ['buried log'], means: 'a log or timber buried across the pull, with the line led out by a sloping trench' },
  { term: 'picket holdfast', means: 'stakes driven in line and lashed head to foot' },
  { term: 'stand-off', means: 'how far everybody keeps from a loaded line: farther than the longest line in use' },
  { term: 'recoil', means: 'the flight of a line or fitting when something breaks under load' },
]);

const tool = group([
  { term: 'logbook', means: 'the dated entries of a line: what was done to it and what was found on it' },
  { term: 'repair', means: 'cuts and splices that are intended and not yet made, written down for review', known: 'our own word' },
  { term: 'practice', means: 'a limit that a crew sets itself, with where it comes from; it replaces a built-in one', known: 'our own word' },
  { term: 'rule', means: 'one thing that is looked for, with a name, a reason and a source' },
  { term: 'finding', means: 'one place where a rule is not met' },
  { term: 'not judged', means: 'a check that could not be made because a fact is missing; it is neither passed nor failed', known: 'our own word' },
  { term: 'assumed', means: 'taken from a table or a rule of practice because nobody wrote it; marked wherever it counts' },
  { term: 'set aside', means: 'a finding that somebody accepts, with a written reason: `# allow CODE: reason`', known: 'our own word' },
  { term: 'careful end', means: 'the end of a range that errs away from harm: the least strength, the most load', known: 'our own word' },
  { term: 'IP code', means: 'protection of a housing against dust and water by IEC 60529; class 8 against water holds only on the terms its maker states' },
  { term: 'short ton, long ton, tonne', means: '2,000 lb, 2,240 lb and 1,000 kg; `ton` alone is refused because it can mean any of them' },
  { term: 'kilogram-force (kgf)', means: 'the weight of a kilogram under standard gravity, 9.80665 N' },
]);

/** The words of the trade that the language, its messages and its papers use: one definition each. */
export const glossary: readonly { readonly title: string; readonly terms: readonly GlossaryTerm[] }[] = [
  { title: 'Winch and drum', terms: drum },
  { title: 'Line', terms: line },
  { title: 'Splices', terms: splice },
  { title: 'Gear', terms: gear },
  { title: 'Pulls and anchors', terms: pull },
  { title: 'Working with rig files', terms: tool },
];

const byWord = new Map<string, GlossaryTerm>(
  glossary.flatMap(({ terms }) => terms.flatMap((t): [string, GlossaryTerm][] => [t.term, ...(t.also ?? [])].map((word) => [word.toLowerCase().replaceAll('-', ' '), t]))),
);

/** The term that a word or phrase means, hyphens and capitals aside: `hollow-braid` finds `hollow braid`. */
export const glossaryTerm = (word: string): GlossaryTerm | undefined => byWord.get(word.toLowerCase().replaceAll('-', ' '));
