import type { Source, Trust } from './source.ts';

/** Common practice: no document stands behind it, and the sentence says what is done. */
export const practice = (key: string, sentence: string): Source => ({ key, title: sentence, trust: 'practice' });

/** A choice of our own, with its reason in the sentence. */
export const ownChoice = (key: string, sentence: string): Source => ({ key, title: sentence, trust: 'own' });

/** Mechanics or arithmetic that anybody can check by hand. */
export const derivedFrom = (key: string, sentence: string): Source => ({ key, title: sentence, trust: 'derived' });

type Entry = readonly [trust: Trust, title: string];

const collect = <K extends string>(entries: Readonly<Record<K, Entry>>): Readonly<Record<K, Source>> => {
  const all = {} as Record<K, Source>;
  for (const key of Object.keys(entries) as K[]) all[key] = { key, title: entries[key][1], trust: entries[key][0] };
  return all;
};

/** Every document and every sentence of practice that figures are taken from, by key. */
export const sources = collect({
  // Winch and drum
  'sae-j706': ['secondary', 'SAE J706, rated line pull: a single line on the first layer, as quoted in the trade'],
  'sae-j706-2017-fill': ['secondary', 'SAE J706-2017, fill factor of a drum 0.7 to 0.9, as summarised in the trade'],
  'tm-9-2320-430-10': ['read', 'US Army TM 9-2320-430-10 (2009), WP 0082 table 1, line pull by layer of a 20,000 lb vehicle winch'],
  'tm-9-2320-430-10-wraps': ['read', 'US Army TM 9-2320-430-10 (2009), WP 0082, wraps to keep on the drum: 5'],
  'tm-9-2320-280-10-wraps': ['read', 'US Army TM 9-2320-280-10, para 2-26c, wraps to keep on the drum: 4'],
  'tm-9-2320-280-10-spooling': ['read', 'US Army TM 9-2320-280-10, p. 2-134, re-spool under at least 500 lbf'],
  'oceanographic-handbook-12-5': ['read', 'Handbook of Oceanographic Winch, Wire and Cable Technology, ch. 12, p. 12-5, drum capacity'],
  'alberta-ohs-299': ['read', 'Alberta OHS Code 2009, s. 299(2), wraps to keep: the maker\'s figure, else at least 5'],
  '30-cfr-57-19026': ['read', '30 CFR 57.19026(b), 3 full turns at the greatest working length'],
  '29-cfr-1910-179': ['read', '29 CFR 1910.179(h)(2)(iii)(a), not less than 2 wraps left on the drum'],
  'en-14492-1-wraps': ['memory', 'EN 14492-1, 2 wraps left on the drum'],
  'wire-rope-manual-fleet': ['secondary', 'wire rope users\' manual, fleet angle at most 1.5° on a smooth drum and 2° on a grooved one, line piles at the flange under 0.5°, as reprinted'],
  'wire-rope-lead-distance': ['secondary', 'wire rope maker\'s data, 38 ft (1.5°) or 29 ft (2°) from drum to lead sheave for each foot of half drum width, as reprinted'],
  'nsw-dogging-rigging-fleet': ['read', 'New South Wales Government, Dogging and rigging guide, part 1, Fleet angles, distance from drum to first sheave'],
  'practice-keep-wraps-hmpe': ['practice', '8 to 10 wraps are kept for slippery HMPE on a smooth barrel; no standard was found'],
  'practice-freeboard': ['practice', 'the flange stands 1 to 2 line diameters above the outermost layer'],
  'exercise-winch-8298': ['read', 'mathematics exercise "Winch" (no. 8298), 20 m of 6 mm rope on a drum 60 mm wide with a barrel of 50 mm'],

  // Line
  'hmpe-handbook': ['read', 'handbook overview of HMPE fibre: melts at 144 to 152 °C, strength loss begins about 65 °C'],
  'marissen-2011': ['read', 'Marissen, Materials Sciences and Applications 2 (2011) 319-330, HMPE fibre'],
  'ci-1401-15': ['read', 'Cordage Institute CI 1401-15, design factor 5 to 12 on fibre rope by severity; knots take up to 50 %'],
  'ufc-4-159-03-3-7': ['read', 'UFC 4-159-03 (2005), table 3-7: factor of safety 3.0 on new break strength, nylon 15 % weaker when wet'],
  'ufc-4-159-03-6-8': ['read', 'UFC 4-159-03 (2005), table 6-8, nylon double braid average break by circumference'],
  'ci-2001-04': ['secondary', 'CI 2001-04, inspection of fibre rope, as quoted in inspection guides: retire or cut out at 25 % loss of strand volume by abrasion'],
  'practice-cut-strands': ['practice', 'two or more cut strands close together in a 12-strand line: cut out and re-splice, or retire'],
  '29-cfr-1926-1413-structure': ['read', '29 CFR 1926.1413(a)(2)(i) and (ii): crushing, kinks, birdcaging, significant corrosion, and six broken wires in one lay or three in one strand take wire rope out of service'],
  '29-cfr-1926-1413': ['read', '29 CFR 1926.1413(a)(2)(iii), a broken strand takes wire rope out of service'],
  'practice-strength-after-cut-strands': ['practice', 'strength left is taken as the share of strands left uncut'],
  'fibre-maker-table-3': ['read', 'aramid fibre maker\'s data, table 3, tensile properties of industrial fibres; 1.4 times that is taken, since fibre has become stronger'],
  'navedtra-14160-outdoor': ['read', 'NAVEDTRA 14160 (after NSTM ch. 613), line left outdoors loses about 30 % in two years'],
  'navedtra-14160-overload': ['read', 'NAVEDTRA 14160 (after NSTM ch. 613), line loaded over 75 % of break is permanently damaged'],
  'hmpe-knot-tests': ['read', 'sailing-press tests, knots in HMPE slip at 20 to 35 % of break'],
  'navedtra-builder-manila': ['read', 'NAVEDTRA Builder 3&2, manila breaks at 900 C² lb; polyester ×2.0, nylon ×2.5, polypropylene ×1.4 on that'],
  'seam-111-ropes': ['read', 'nautical course notes SEAM 111, Calculating the Breaking Strength and Safe Work Load of Ropes: 3 t / 6 = 0.5 t'],
  'uscg-nylon-question': ['memory', 'US Coast Guard deck examination: nylon line of 15,000 lb breaking strain, safety factor 5, works at 3,000 lb'],

  // Splices in hollow braid
  'fid-chart': ['read', 'maker\'s published splicing instruction "Fid information", full and short fid lengths'],
  'fid-21d': ['read', 'makers\' published splicing instructions, a fid length is 21 d'],
  'maker-12-strand-eye': ['read', 'maker\'s published instruction, 12-strand high-modulus eye splice: tail 3 fids, all of the last fid tapered, 90 to 100 % of strength kept'],
  'maker-12-strand-taper': ['read', 'maker\'s published instruction, taper of a 12-strand: every second left and right strand dropped, three of each, 6 of 12 left at the tip'],
  'toss-103-105': ['read', 'Toss, The Complete Rigger\'s Apprentice, pp. 103-105: bury 72 d in HMPE, 24 d in polyester and nylon hollow braid'],
  'toss-104': ['read', 'Toss, The Complete Rigger\'s Apprentice, p. 104: the exit lies 1 1/3 tail lengths from the entry'],
  'break-tests-3-5-fids': ['read', 'independent break tests of HMPE eye splices, 3.5 fids buried: without taper 13 to 20 % below the average'],
  'tuck-bury-hmpe': ['read', 'maker\'s published instruction, tuck-bury eye for HMPE: tail 31.5 d with half the strands tucked'],
  'blunt-tail-tests': ['read', 'amateur test series, polyester hollow braid, blunt against tapered tail in measured pairs: 7.9 to 8.7 % weaker'],
  'splice-shortening-measured': ['read', 'splicer\'s measurement, the standing part shortens by 15 % over the buried tail'],
  'lock-stitch-guide': ['read', 'maker\'s published splicing guide, lock-stitch over 6 to 8 d from the throat, stitches one d apart, and back'],
  'practice-field-splice': ['practice', 'field repair of a line of about 10 mm: 18 in of bury, the exit 4 in farther on; a lasting splice has a longer taper and close to 2 ft'],
  'practice-splicing-tape': ['practice', 'tape for splicing is slippery outside and leaves no glue (packing tape); duct and masking tape are not'],
  'eye-geometry': ['derived', 'geometry of a loop of line around an eye, a thimble or a pin'],
  'helix-geometry': ['derived', 'geometry of strands that do not stretch, on a helix whose tube grows'],

  // Shackles, straps, bends
  'asme-b30-26-1-2': ['secondary', 'ASME B30.26-2010, 26-1.2, design factor of shackles at least 5 up to 150 tons'],
  'shackle-side-load': ['secondary', 'maker\'s catalogue reproducing ASME practice, shackle side load: 100 % in line, 70 % at 45°, 50 % at 90°'],
  'wac-296-155-33905': ['read', 'WAC 296-155-33905, shackles: side load bands; screw pin fully engaged; running line on the bow'],
  'wac-296-54-54730': ['read', 'WAC 296-54-54730, shackle at least one size larger than the line it joins'],
  'wac-296-304-07005': ['read', 'WAC 296-304-07005, shackle marks must show the working load limit'],
  'practice-screw-pin': ['practice', 'a screw pin is done up by hand until it seats, then eased slightly so that it does not bind after the pull'],
  'as-2741': ['read', 'AS 2741, shackles, grade S: body and pin diameters and working load limits'],
  'rr-c-271': ['memory', 'US Federal Specification RR-C-271, grade A shackles: working load limits in short tons by size'],
  'navedtra-14251-shackle': ['read', 'NAVEDTRA 14251, rule of thumb for any shackle: SWL = 3 D² short tons'],
  'wac-296-155-55820': ['read', 'WAC 296-155-55820, table 25, web slings to remove from service'],
  '29-cfr-1918-app-ii': ['read', '29 CFR 1918 app. II table 2, fibre rope slings, factor 5'],
  'practice-rope-on-rope': ['practice', 'eye through eye has no published efficiency: it is treated as a bend over D/d = 1, or joined with something round and smooth'],
  'hoist-manual-table-b': ['read', 'hoist manual, table B, strength loss of wire rope by sheave ratio'],

  // Pulls, blocks, anchors
  'fm-20-22-mire': ['memory', 'US Army FM 20-22 family, mire resistance: wheel depth 1, fender depth 2, cab depth 3 times the weight'],
  'fire-service-mire': ['read', 'fire-service winching table, mire resistance: sidewall depth 1, hub depth 2, frame depth 3 times the weight'],
  'surface-fractions': ['memory', 'British off-road table of rolling resistance: hard road 1/25 to bog 1/2'],
  'surface-fractions-read': ['read', 'British off-road table of rolling resistance: hard road 1/25, hard wet sand 1/6, bog 1/2'],
  'winching-guide-p8': ['read', 'winching guide, p. 8, grade resistance: 1/60 of the weight for each degree up to 45°'],
  'army-lesson-63h34f01': ['read', 'US Army lesson 63H34F01 (after FM 9-43-2), load resistance, tackle resistance, fall line and dead line force'],
  'tb-9-2350-292-10': ['read', 'US Army TB 9-2350-292-10, load resistance, tackle resistance, fall line and dead line force'],
  'army-estimate-derived': ['derived', 'arithmetic on the formulas of US Army lesson 63H34F01'],
  'rigging-catalogue-blocks': ['read', 'rigging catalogues (the same table in two), load on a block by the angle between the parts'],
  'sheave-loss-plain': ['read', 'US Army and Navy manuals, loss at a plain sheave 10 %'],
  'sheave-loss-roller': ['memory', 'loss at a sheave on rollers 4 to 5 %'],
  'rigging-text-legs': ['read', 'rigging text, two-legged sling: W/2 ÷ sin(angle from horizontal)'],
  'towing-training-anchor': ['read', 'towing training text, a braked vehicle holds 0.666 of its weight; an anchor vehicle has at least 1.5 times the resistance'],
  'navedtra-14251-pickets': ['read', 'NAVEDTRA 14251, picket holdfasts in loam'],
  'tm-5-5420-278-10': ['read', 'US Army TM 5-5420-278-10, WP 0035 table 9, holding power of a buried log'],
  'tm-9-2320-356-bd': ['read', 'US Army TM 9-2320-356-BD, everybody farther off than the longest line in use'],
  'tb-55-1900-232-10': ['read', 'US Army TB 55-1900-232-10, ends of a broken synthetic line travel up to 500 mph'],
  'elastic-energy': ['derived', 'mechanics: energy stored in a line that stretches in proportion, E = ½ F x'],
  'statics': ['derived', 'mechanics: forces in balance at every point'],
  'capstan-equation': ['derived', 'mechanics: line round a drum, T₂/T₁ = exp(μ θ)'],
  'capstan-exercise': ['read', 'open exercise on friction with belt drives: μ = 0.3, one full turn, T₂/T₁ ≈ 6.6; two turns ≈ 43'],
  'belt-drive-lesson': ['read', 'open lesson on friction with belt drives: μ = 0.3, half a turn, T₂/T₁ ≈ 2.6'],
  'belt-and-rope-question': ['read', 'open exercise on belt and rope friction: μ = 0.25, two and a half turns, 2,000 N held by about 39 N'],
  'rope-friction-exercise-27': ['read', 'Engineering mechanics 1, exercise 27, rope friction: 100 kg on a rope over three quarters of a turn, μ = 0.2, held by 382.26 N (g = 9.81 m/s²)'],

  // Sealing and units
  'iec-60529': ['secondary', 'IEC 60529, degrees of protection: IPX7 1 m for 30 min; IPX8 on terms the maker states'],
  'nist-sp-811': ['read', 'NIST SP 811 (2008), app. B, conversion factors'],
  'geometry': ['derived', 'geometry of a drum wound layer on layer without nesting'],
  'lengths-add': ['derived', 'arithmetic: lengths along a line add up'],
} as const satisfies Record<string, Entry>);

export type SourceKey = keyof typeof sources;
