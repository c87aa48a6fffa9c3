import { standardGravity } from '../units/unit-table.ts';

/** Tensile strength of fibres as published (kgf/mm²); where several are listed, the strongest. */
const published_kgf_mm2: Readonly<Record<string, number>> = { HMPE: 290, aramid: 347, polyester: 115, nylon: 106, wire: 275 };
/** Fibre has become stronger since: HMPE by a third, from memory. */
const since = 1.4;

/** The most that the fibre of a material bears (Pa), with room for newer fibre; undefined where no figure was found. */
export function fibreStrength_Pa(material: string | undefined): number | undefined {
  const strength = material === undefined ? undefined : published_kgf_mm2[material];
  return strength === undefined ? undefined : strength * standardGravity * 1e6 * since;
}
