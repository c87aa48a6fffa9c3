/** Rounding noise must not cost a wrap or add a layer. */
const noise = 1e-9;

export const wholeWraps = (width_m: number, diameter_m: number): number => Math.floor(width_m / diameter_m + noise);

/** Length of line on the first `layers` full layers. */
export const lengthThrough_m = (layers: number, wraps: number, barrel_m: number, diameter_m: number): number => Math.PI * wraps * layers * (barrel_m + layers * diameter_m);

/** Diameter at the middle of the line on a layer. */
export const layerDiameter_m = (layer: number, barrel_m: number, diameter_m: number): number => barrel_m + (2 * layer - 1) * diameter_m;

/** The layer on which a drum holding `onDrum_m` of line carries its outermost wrap; `onDrum_m` is above zero. */
export function outermostLayer(onDrum_m: number, wraps: number, barrel_m: number, diameter_m: number): number {
  const root = (-barrel_m + Math.sqrt(barrel_m ** 2 + (4 * diameter_m * onDrum_m) / (Math.PI * wraps))) / (2 * diameter_m);
  return Math.max(1, Math.ceil(root - noise));
}

/** Length of line in the `kept` wraps nearest the barrel. */
export function lengthOfWraps_m(kept: number, wraps: number, barrel_m: number, diameter_m: number): number {
  const full = Math.floor(kept / wraps + noise);
  return lengthThrough_m(full, wraps, barrel_m, diameter_m) + Math.PI * Math.max(0, kept - full * wraps) * layerDiameter_m(full + 1, barrel_m, diameter_m);
}
