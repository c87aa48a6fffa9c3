import type { Kind } from '../../src-core/units/dimension.ts';
import { isUnknown, type Derivation, type Derived, type Given } from '../../src-core/mechanics/derivation.ts';
import { readInput } from '../../src-core/mechanics/read-input.ts';

/** A value of this kind, as somebody writes it: `20,000 lbf`, `3`, `0.9 to 0.98`. */
export function given(text: string, kind: Kind): Given {
  const value = readInput('value', { kind, meaning: 'a value of this test' }, text);
  if (typeof value === 'string') throw new Error(value);
  return value;
}

export const readSI = (text: string, kind: Kind): number => given(text, kind).amount.low;

/** The derivation, or a failure that says why there is none. */
export function worked(derived: Derived): Derivation {
  if (isUnknown(derived)) throw new Error(derived.unknown.says);
  return derived;
}
