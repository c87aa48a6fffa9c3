import type { Place } from '../base/span.ts';
import type { Fix } from '../model/bound.ts';

/**
 * error: cannot be read or computed, or a cited limit is passed. warning: passes practice, or rests on an assumed value.
 * information: not judged, and the fact that is missing. hint: style.
 */
export type Severity = 'error' | 'warning' | 'information' | 'hint';
export const severities: readonly Severity[] = ['error', 'warning', 'information', 'hint'];

export interface Related {
  readonly place: Place;
  readonly message: string;
}

export interface Finding {
  /** The rule's name. */
  readonly code: string;
  readonly severity: Severity;
  readonly place: Place;
  /** Stands alone: what, its value, the limit. */
  readonly message: string;
  readonly why: string | undefined;
  /** The cheapest honest way out. */
  readonly help: string;
  readonly source: string | undefined;
  readonly related: readonly Related[];
  readonly fixes: readonly Fix[];
}

/** What a rule says; the rest comes from its definition. */
export interface Draft {
  readonly place: Place;
  readonly message: string;
  readonly help: string;
  readonly why?: string | undefined;
  readonly source?: string | undefined;
  readonly severity?: Severity;
  readonly related?: readonly Related[] | undefined;
  readonly fixes?: readonly Fix[] | undefined;
}
