import type { Source, Trust } from './source.ts';

const source = (key: string, trust: Trust, title: string): Source => ({ key, title, trust });

// Blocks, tackles and legs
export const blockGuide = source('block-selection-guide', 'read', 'block maker\'s selection guide, how to calculate the load on a block');
export const blockStressChart = source('block-stress-chart', 'read', 'block maker\'s catalogue, p. 7, stress formula and chart');
export const slingLegText = source('sling-leg-drawings', 'read', 'rigging supplier\'s text on the lifting capacity of a sling, drawings 3 and 4');
export const wireRopeUsers = source('wire-rope-users-manual-86', 'read', 'Wire Rope Users Manual, 4th ed., pp. 86-88, lead line of a tackle, as reprinted in a crane manual');
export const pipelineHandbook = source('pipeline-rules-of-thumb-6', 'read', 'Pipeline Rules of Thumb Handbook, p. 6, advantage of block and tackle with friction');
export const riggersHandbook = source('riggers-handbook-137', 'read', 'rigging supplier\'s handbook, p. 137, how to figure line parts');

// Ground, slope and water
export const towMagazine = source('surface-when-winching', 'read', 'towing trade magazine (2013), surface resistance when winching');
export const winchAnswers = source('winch-maker-answers', 'read', 'winch maker\'s published answers on resistance by surface and slope: hard 1/10, grass or gravel 1/3, locked wheels 2/3');
export const winchSellerGuide = source('winch-seller-incline', 'read', 'winch seller\'s guide, drag of the rolling surface');
export const snowCase = source('snow-recovery-case', 'read', 'recovery vehicle maker\'s case study, a pull on snow: 0.1 to 0.3 of the weight');
export const winchingGuideGrades = source('winching-guide-p8-grades', 'read', 'winching guide, p. 8, resistance by per cent of grade');
export const recoverySchool = source('recovery-school-gradient', 'read', 'off-road recovery school\'s worked example, 5,700 lb bogged to the body on 15°');
export const waterWeight = source('water-62-4', 'memory', 'fresh water weighs 62.4 lb a cubic foot');

// Anchors
export const deadmanByHand = source('deadman-by-hand', 'derived', 'arithmetic by hand on the formula of US Army TM 5-5420-278-10, WP 0035');
export const deadmanThickness = source('tm-5-5420-278-10-thickness', 'read', 'US Army TM 5-5420-278-10, WP 0035, deadman thickness: a log at most 5 diameters long');

// Shackles
export const wacShackleBands = source('wac-296-155-33905-fig-17', 'read', 'WAC 296-155-33905, figure 17: bands in line to 5°, 6 to 45°, 46 to 90°, over 90° not permitted');
export const softShackleTests = source('soft-shackle-tests', 'read', 'splicers\' published break tests of soft shackles: diamond knot 170 %, button knot 230 % of the line');

// Definitions and mechanics
export const energyOfMotion = source('energy-of-motion', 'derived', 'mechanics: stored energy turned wholly into motion, E = ½ m v²');
export const rightTriangle = source('right-triangle', 'derived', 'geometry: rise over run');

// Our own careful choices
export const ownTotal = source('own-total-resistance', 'own', 'ground, mire and dragging wheels may be parts of one resistance or may add; both ends are carried and the higher one is judged');
export const ownNoBuoyancy = source('own-no-buoyancy', 'own', 'water is taken to carry none of the weight, because the wheels stand on the bottom when the pull begins');
export const ownRowBelow = source('own-weaker-row', 'own', 'between two rows of a table the weaker row counts, because no source interpolates');
export const ownDragShare = source('own-drag-share', 'own', 'wheels that do not turn drag with two thirds of the weight they carry');
export const ownWeaker = source('own-lowest-claim', 'own', 'the low end is the least that the testers claim, because a knot that is not set breaks far below their average');

// Energy
export const bowExercise = source('bow-exercise', 'read', 'physics exercise, a bow drawn 0.6 m by 300 N: 90 J stored, an arrow of 30 g leaves at 77.46 m/s');
export const nylonStretchQuestion = source('nylon-stretch-question', 'read', 'seamanship examination question: nylon stretches by up to a third under its working load, 30 ft to about 40 ft');
export const ropeElongationTest = source('rope-elongation-test', 'read', 'rope maker\'s elongation test: marks 30 in apart stand 34 1/2 in apart at an elongation of 15 %');
export const springLesson = source('spring-lesson', 'read', 'mechanics lesson on springs: 200 N/m over 0.1 m stores 1 J');
