import type { Finding, Severity } from '../assess/finding.ts';
import type { Locate, Location } from './locate.ts';

/** A finding for other programs. What is not said is left out. */
export interface FindingJson extends Location {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly why?: string;
  readonly help?: string;
  readonly source?: string;
  readonly related: readonly (Location & { readonly message: string })[];
  /** `mechanical` fixes change spelling only and may all be applied at once. */
  readonly fixes: readonly { readonly title: string; readonly mechanical: boolean; readonly edits: readonly (Location & { readonly text: string })[] }[];
}

const nowhere: Location = { file: '', line: 0, column: 0, endLine: 0, endColumn: 0 };

export function findingJson(finding: Finding, locate: Locate): FindingJson {
  const { why, help, source } = finding;
  return {
    ...(locate(finding.place) ?? nowhere),
    code: finding.code,
    severity: finding.severity,
    message: finding.message,
    ...(why === undefined ? {} : { why }),
    ...(help === '' ? {} : { help }),
    ...(source === undefined ? {} : { source }),
    related: finding.related.flatMap(({ place, message }) => {
      const at = locate(place);
      return at === undefined ? [] : [{ ...at, message }];
    }),
    fixes: finding.fixes.map((fix) => ({
      title: fix.title,
      mechanical: fix.mechanical === true,
      edits: fix.edits.flatMap(({ place, text }) => {
        const at = locate(place);
        return at === undefined ? [] : [{ ...at, text }];
      }),
    })),
  };
}
