import { expect, test } from 'vitest';
import '../../src-core/mechanics/all.ts';
import { calculations } from '../../src-core/mechanics/define-calculation.ts';
import { isUnknown, type Given, type Value } from '../../src-core/mechanics/derivation.ts';
import { exactly } from '../../src-core/units/amount.ts';
import { sources } from '../../src-core/trade/sources.ts';

/*
 * Where each calculation holds, typed here a second time so that a slip in one of the two is seen. SI numbers, angles in degrees.
 *
 * Why there: a size, a mass or a strength that is nothing divides by nothing, or means that nothing is there (above 0); a load, a
 * loss or a length of line may be nothing (from 0); a share is at most the whole (to 1), a loss of length by splicing at most half;
 * things are counted whole and from one; two parts of a line lie at most straight against each other (to 180 deg), the legs of a
 * bridle short of that, because their tension then has no end; a slope or a leg stands at most upright (to 90 deg). The far ends are
 * our own choice and catch a slip of the pen: 1 m of diameter for a line, 10 m for drum, thimble and pin, 1,000 m for a part of a
 * splice, 100 km of line, 100 MN, 10,000 wraps, 1,000 layers, a century.
 */
const drum = { B: 'above 0 to 10', d: 'above 0 to 1' };
const layers = { w: 'whole from 1 to 10000', ...drum };
const n = 'whole from 1 to 1000';
const line = 'above 0 to 100000';
const strength = 'above 0 to 1e8';
/** What damage leaves may be nothing. */
const left = 'from 0 to 1e8';
const share = 'above 0 to 1';
const loss = 'from 0 to 1';
const part = 'from 0 to 1000';
const shortening = 'from 0 to 0.5';
const strands = { n: 'whole from 0 to 1000', N: 'whole from 1 to 1000' };

const table: Record<string, Record<string, string>> = {
  'capstan-hold': { μ: 'from 0 to 2', θ: 'from 0 to 36000 deg' },
  'layers-that-fit': { A: 'above 0 to 10', ...drum, f: 'from 0 to 10' },
  'drum-capacity-by-layers': { W: 'above 0 to 10', A: 'above 0 to 10', ...drum, f: 'from 0 to 10' },
  'drum-capacity-handbook': { W: 'above 0 to 10', h: 'above 0 to 10', ...drum },
  'drum-capacity-with-fill': { φ: share, W: 'above 0 to 10', h: 'above 0 to 10', ...drum },
  'fleet-angle': { o: part, D: 'above 0 to 10000' },
  freeboard: { A: 'above 0 to 10', ...drum, n },
  'layer-at-line-out': { L: line, x: 'from 0 to 100000', ...layers },
  'layer-length': { ...layers, n },
  // At more than 45 deg a line does not lead on to a drum.
  'lead-distance': { o: part, θ: 'above 0 to 45 deg' },
  'length-kept-by-wraps': { k: 'from 0 to 10000', ...layers },
  'length-on-partial-layer': { L: line, ...layers, n },
  'length-through-layer': { ...layers, n },
  'line-left-on-drum': { L: line, x: 'from 0 to 100000' },
  'line-out-for-pull': { F: strength, F_1: strength, L: line, ...layers },
  'pull-at-line-out': { F_1: strength, L: line, x: 'from 0 to 100000', ...layers },
  'pull-by-layer': { F_1: strength, ...drum, n },
  'pull-on-first-layer': { F_r: strength, r: n, ...drum },
  'speed-by-layer': { v_1: 'above 0 to 100', ...drum, n },
  'speed-on-first-layer': { v_r: 'above 0 to 100', r: n, ...drum },
  'line-wound-in-run': { v: 'above 0 to 100', τ: 'above 0 to 86400' },
  'tension-at-fastening': { 'T₂': 'from 0 to 1e8', μ: 'from 0 to 2', k: 'from 0 to 10000' },
  'usable-length': { L: line, K: 'from 0 to 100000' },
  'wraps-left': { y: 'from 0 to 100000', ...layers },
  'wraps-per-layer': { W: 'above 0 to 10', d: 'above 0 to 1' },
  'breaking-from-working-limit': { WLL: strength, f: 'from 1 to 100' },
  'working-limit-from-breaking': { MBL: left, f: 'from 1 to 100' },
  'cut-strand-share': strands,
  'length-of-diameters': { k: part, d: 'above 0 to 1' },
  'overload-limit': { F_b: strength, o: share },
  'strength-after-abrasion': { F_b: strength, a: loss },
  'strength-after-cut-strands': { F_b: strength, ...strands },
  'strength-after-losses': { F_b: strength, s_1: loss, s_2: loss },
  // 100 years of 365.25 days.
  'strength-after-outdoor-time': { F_b: strength, λ: loss, τ: 'from 0 to 3155760000', τ_0: 'above 0 to 3155760000' },
  'strength-of-knot': { F_b: strength, k: share },
  'strength-of-splice': { F_b: strength, η: share, T: part, T_0: 'above 0 to 1000', t: part, t_0: 'above 0 to 1000', β: loss },
  'wet-strength': { F_b: strength, ω: loss },
  'bury-in-diameters': { T: part, d: 'above 0 to 1' },
  'bury-needed': { k: 'above 0 to 1000', d: 'above 0 to 1' },
  'bury-share': { T: part, T_0: 'above 0 to 1000' },
  'entry-mark': { T: part, E: part },
  'exit-distance': { T: part, c: shortening },
  'exit-mark': { T: part, E: part, c: shortening },
  'eye-loop-around-pin': { l: 'above 0 to 100', D: 'above 0 to 10', d: 'above 0 to 1' },
  'eye-loop-around-thimble': { D: 'above 0 to 10', d: 'above 0 to 1' },
  'eye-loop-length': { l: 'above 0 to 100' },
  'fid-length': { d: 'above 0 to 1' },
  'finished-length': { L_0: line, U_1: part, U_2: part },
  // Strands at more than 45 deg lie more around the line than along it.
  'helix-shortening-estimate': { 'α₁': 'above 0 to 45 deg', σ: 'above 0 to 0.5' },
  'line-needed-for-finished-length': { L_f: line, U_1: part, U_2: part },
  'lock-stitch-length': { k: 'above 0 to 100', d: 'above 0 to 1' },
  'rope-used-by-end-to-end': { T: part, c: shortening },
  'rope-used-by-eye': { T: part, E: part, c: shortening },
  'splice-shortening': { T: part, c: shortening },
  'taper-drop-mark': { t: 'above 0 to 1000', i: 'whole from 1 to 100', m: 'whole from 1 to 100' },
  'taper-needed': { k_t: part, d: 'above 0 to 1' },
  'throat-angle': { l: 'above 0 to 100', D: 'above 0 to 10', d: 'above 0 to 1' },
  'shackle-side-load-share': { α: 'from 0 to 90 deg' },
  'side-loaded-limit': { WLL: 'above 0', s: share },
  'shackle-rule-of-thumb': { D: 'above 0' },
  'bend-ratio': { D: 'above 0', d: 'above 0' },
  // The table of the hoist manual begins at 6.
  'wire-bend-share': { R: 'from 6' },
  'choker-limit': { WLL: 'above 0' },
  // Two bights of line, doubled, can carry no more than four lines.
  'soft-shackle-strength': { F: 'above 0', k: 'above 0 to 4' },
  'sling-leg-tension': { W: 'from 0', β: 'above 0 to 90 deg' },
  'bridle-leg-tension': { P: 'from 0', θ: 'from 0 to 179 deg' },
  'bridle-uneven-tension': { P: 'from 0', α: 'from 0 to 90 deg', β: 'above 0 to 90 deg' },
  'block-load': { T: 'from 0', θ: 'from 0 to 180 deg' },
  'block-load-with-friction': { T: 'from 0', e: share, θ: 'from 0 to 180 deg' },
  'tackle-advantage': { n: 'whole from 1 to 100', E: share },
  'lead-line-pull': { R: 'from 0', MA: 'above 0' },
  'vehicle-weight': { m: 'above 0' },
  'surface-resistance': { W: 'from 0', f: 'from 0 to 3' },
  'grade-angle': { G: 'from 0 to 100' },
  'grade-resistance': { W: 'from 0', α: 'from 0 to 90 deg' },
  // The rule says that it ends at 45 deg.
  'grade-resistance-by-rule': { W: 'from 0', α: 'from 0 to 45 deg' },
  'mire-resistance': { W: 'from 0', k: 'from 0 to 5' },
  'drag-resistance': { W: 'from 0', p: loss, f: 'from 0 to 3' },
  'water-load': { A: 'from 0', h: 'from 0' },
  'total-resistance': { R_s: 'from 0', R_g: 'from 0', R_m: 'from 0', R_d: 'from 0' },
  'parts-needed': { LR: 'from 0', P: 'above 0' },
  'tackle-resistance': { LR: 'from 0', MA: 'whole from 1' },
  'fall-line-force': { LR: 'from 0', TR: 'from 0', MA: 'whole from 1' },
  'dead-line-force': { FLF: 'from 0', n: 'whole from 1' },
  'braked-vehicle-hold': { W: 'above 0' },
  'anchor-vehicle-needed': { R: 'from 0' },
  // Table 9 begins at 3 ft, 36 in, and at a slope of 1:1; hardpan holds five times what loam does.
  'deadman-holding-power': { D: `from ${36 * 0.0254}`, n: 'from 1', k: 'above 0 to 5' },
  'deadman-length': { F: 'from 0', HP: 'above 0', b: 'above 0' },
  // The first foot of a log, 12 in, is given away.
  'deadman-hold': { HP: 'above 0', b: 'above 0', L: `above ${12 * 0.0254}` },
  'line-stretch': { ε: loss, L: 'above 0' },
  'stored-energy': { F: 'from 0', x: 'from 0' },
  'recoil-speed': { E: 'from 0', m: 'above 0' },
  'stand-off-distance': { L: 'above 0' },
  'tension-in-part': { s: share, T: 'from 0' },
  'tension-in-use': { T_n: 'from 0', F_n: 'from 0' },
};

interface Range {
  readonly low: number;
  readonly lowAllowed: boolean;
  readonly high: number | undefined;
  readonly whole: boolean;
}

function readRange(text: string): Range {
  const [, whole, how, low, high, degrees] = /^(whole )?(above|from) (\S+)(?: to (\S+?)( deg)?)?$/.exec(text)!;
  const scale = degrees === undefined ? 1 : Math.PI / 180;
  return { low: Number(low) * scale, lowAllowed: how === 'from', high: high === undefined ? undefined : Number(high) * scale, whole: whole !== undefined };
}

const rows = Object.entries(table).flatMap(([name, symbols]) => Object.entries(symbols).map(([symbol, range]) => [name, symbol, range] as const));

test.each(rows)('%s, %s: %s', (name, symbol, text) => {
  const calculation = calculations().get(name)!;
  expect(Object.keys(table[name]!).sort()).toEqual(Object.keys(calculation.symbols).sort());
  const { meaning } = calculation.symbols[symbol]!;
  const inside = ({ low, lowAllowed, high, whole }: Range): number => (lowAllowed ? low : high !== undefined ? high : whole ? low + 1 : low + 0.5);
  /** The sentence that refuses this value of the symbol; undefined when nothing is said of it. */
  const refusal = (value: number): string | undefined => {
    const given = (number: number, of: string): Given => ({ amount: exactly(number), kind: calculation.symbols[of]!.kind, origin: { from: 'constant', source: sources.geometry } });
    const values = Object.fromEntries(Object.entries(table[name]!).map(([other, range]) => [other, given(other === symbol ? value : inside(readRange(range)), other)]));
    const result = calculation(values as Record<string, Value>);
    if (!isUnknown(result)) return undefined;
    const start = `${meaning} (${symbol}) is `;
    return result.unknown.says.startsWith(start) ? result.unknown.says.slice(start.length).replace(/^.*?; /, '') : undefined;
  };
  const { low, lowAllowed, high, whole } = readRange(text);
  const trace = 1e-9;
  if (lowAllowed) {
    expect(refusal(low)).toBeUndefined();
    expect(refusal(whole ? low - 1 : low - trace * Math.max(1, low))).toMatch(/^the calculation holds from /);
    // Rounding noise at the end of the range is no reason to refuse.
    expect(refusal(low * (1 - 1e-13))).toBe(whole && low > 0 ? 'it must be a whole number' : undefined);
  } else {
    expect(refusal(low)).toMatch(/^it must be above /);
    expect(refusal(low + trace * Math.max(1, low))).toBeUndefined();
  }
  if (high === undefined) expect(refusal(low + 1e6)).toBeUndefined();
  else {
    expect(refusal(high)).toBeUndefined();
    expect(refusal(whole ? high + 1 : high * (1 + trace))).toMatch(/^the calculation holds up to /);
    if (!whole) expect(refusal(high * (1 + 1e-13))).toBeUndefined();
  }
  if (whole) expect(refusal(low + 1.5)).toBe('it must be a whole number');
});
