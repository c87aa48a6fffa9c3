import { derivedFrom, ownChoice, practice } from './sources.ts';

// Sources of what is worked out for a pull that is planned and for a line that is to be cut.
export const partsAtAngle = derivedFrom('parts-at-an-angle', 'mechanics: two parts that pull at an angle θ to each other pull along its halving line with cos(θ/2) of their tension');
export const lesserOfTwo = derivedFrom('lesser-of-two', 'mechanics: the line carries what the load resists, and never more than the winch pulls');
export const legsAddUp = derivedFrom('legs-add-up', 'arithmetic: line out is the length of all parts, less what gear and extensions bridge');
export const loadsAddUp = derivedFrom('loads-add-up', 'mechanics: what hangs on one thing adds up; without directions all of it counts in one line');
export const forkShare = ownChoice('leg-that-forks', 'a leg behind a further fork counts with anything up to all that comes to the fork, because the stiffest leg may take it');
export const wheelsShare = ownChoice('wheels-share-alike', 'every wheel carries the same share of the weight, because nobody weighs the axles on a track');
export const notCountedYet = ownChoice('known-part-only', 'only what is written is counted: the real resistance is that or more');
export const doubledAngle = ownChoice('doubled-parts-within-30', 'the parts of a doubled line lie within 30° of each other; write `angle` behind the block to replace it');
export const turnedAngle = ownChoice('any-angle', 'a block that turns the line may stand at any angle; write `angle` behind it to replace it');
export const strapSpan = ownChoice('strap-spans-up-to-its-length', 'a strap round an anchor bridges anything up to its length, and up to half of it in a basket');
export const legSpan = ownChoice('legs-span-up-to-their-length', 'the legs of a bridle bridge anything up to the length of the longest, because how far apart they stand is not known');
export const clearOfDamage = ownChoice('cut-five-diameters-clear', 'a cut is made five diameters clear of what was found, because wear thins out by and by');
export const damperPractice = practice('damper-on-line', 'a damper lies on every loaded line');
export const glovesPractice = practice('gloves-on-line', 'gloves are worn whenever a line is handled');
export const splicingTools = practice('splicing-tools', 'a splice in hollow braid takes a fid, slippery tape, a marker, a sharp blade, a rule and, for the lock-stitch, a needle with twine');
export const drumSquareToWay = ownChoice('drum-square-to-way', 'the drum of a winch on the load is taken to lie square to the way that the load is meant to go; write `off-square` to replace it');
