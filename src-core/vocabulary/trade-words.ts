/** What the trade calls otherwise than this language, and the word for it here: of several the first that may stand at the place. */
export const wordsHere: Readonly<Record<string, readonly string[]>> = Object.assign(Object.create(null), {
  // Blocks.
  truck: ['vehicle'], car: ['vehicle'], sling: ['strap'], pulley: ['block'], bag: ['kit'],
  // Statements.
  line: ['carries'], rope: ['carries', 'line'], drum: ['barrel', 'inboard', 'in-drum'], winch: ['inboard'], hub: ['barrel'], wraps: ['keep'], waterproof: ['sealing'],
  capacity: ['rated', 'wll', 'holding'], rating: ['rated', 'wll', 'holding'], swl: ['wll', 'working'], wll: ['working'], working: ['wll'],
  mbl: ['breaking'], mbs: ['breaking'], strength: ['breaking', 'holding'], tensile: ['breaking'],
  fibre: ['material'], fiber: ['material'], braid: ['construction'], size: ['diameter', 'body', 'width', 'girth'], thickness: ['diameter', 'body'],
  gap: ['inside'], opening: ['inside'], label: ['marking'], tag: ['marking'], circumference: ['girth'],
  weight: ['mass'], gvm: ['mass'], gvw: ['mass'], distance: ['reach'], bystanders: ['people'], slope: ['grade'], incline: ['grade'], terrain: ['surface'], stuck: ['mired'],
  // Entries of a logbook.
  chafe: ['abrasion', 'damage'], installed: ['fitted'], wound: ['spooled'], turned: ['reversed'], flipped: ['reversed'], swapped: ['reversed'], discarded: ['retired'], scrapped: ['retired'],
  // Values.
  chafed: ['abrasion'], chafing: ['abrasion'], wear: ['abrasion'], frayed: ['abrasion'], fuzz: ['abrasion'], fuzzy: ['abrasion'],
  severed: ['cut'], sliced: ['cut'], nicked: ['cut'], burnt: ['melt'], burned: ['melt'], fused: ['melt'], snagged: ['pulled'], crushed: ['flattened'], stiff: ['brittle'],
  discoloured: ['stain'], discolored: ['stain'], corrosion: ['rust'], hockle: ['kink'], hook: ['outboard'], garage: ['indoors'], shed: ['indoors'], outside: ['outdoors'], tarp: ['covered'],
  uhmwpe: ['HMPE'], polyethylene: ['HMPE'], polyamide: ['nylon'], steel: ['wire'], loop: ['eye'], bolted: ['lug'], clamp: ['lug'], cable: ['wire', 'carries', 'line'],
  boulder: ['rock'], stone: ['rock'], trunk: ['tree'], asphalt: ['hard-road'], tarmac: ['hard-road'], concrete: ['hard-road'],
});

/** The word here for one of the trade, where it may stand. Which of the two is meant stays for a person to say. */
export const wordHere = (written: string, choices: readonly string[]): string | undefined => wordsHere[written.toLowerCase()]?.find((word) => word !== written && choices.includes(word));

const numbers = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/** The number that a word names. */
export function numberMeant(word: string): string | undefined {
  const index = numbers.indexOf(word.toLowerCase());
  return index < 0 ? undefined : String(index + 1);
}
