import type { Diagnostic } from 'vscode-languageserver';
import type { Finding, Severity } from '../../src-core/assess/finding.ts';
import { ruleNamed } from '../../src-core/rules/all.ts';
import type { RigFile } from '../../src-core/project.ts';
import type { ClientSkills } from './capabilities.ts';
import type { Positions } from './positions.ts';

const severityNumbers: Readonly<Record<Severity, 1 | 2 | 3 | 4>> = { error: 1, warning: 2, information: 3, hint: 4 };

export interface DiagnosticNeeds {
  readonly file: RigFile;
  /** The files that are read together with it, for places in them. */
  others(): Iterable<RigFile>;
  readonly positions: Positions;
  readonly skills: ClientSkills;
  uriOf(path: string): string;
}

/** The first line stands alone in a list of problems; reason, way out and source are below it. */
export const diagnosticText = ({ message, why, help, source }: Finding): string =>
  [message, ...(why === undefined ? [] : [`why: ${why}`]), `help: ${help}`, ...(source === undefined ? [] : [`source: ${source}`])].join('\n');

export function toDiagnostic(finding: Finding, { file, others, positions, skills, uriOf }: DiagnosticNeeds): Diagnostic | undefined {
  const span = file.spanOf(finding.place);
  if (span === undefined) return undefined;
  const related = skills.relatedInformation
    ? finding.related.flatMap(({ place, message }) => {
        for (const other of file.offsetOf(place.chunk) === undefined ? others() : [file]) {
          const found = other.spanOf(place);
          if (found !== undefined) return [{ location: { uri: uriOf(other.path), range: positions.range(other.lines, found) }, message }];
        }
        return [];
      })
    : [];
  return {
    range: positions.range(file.lines, span),
    severity: severityNumbers[finding.severity],
    source: 'linewright',
    code: finding.code,
    // Only the extension shows these pages, and they need no network.
    ...(skills.own && skills.codeDescription && ruleNamed(finding.code) !== undefined ? { codeDescription: { href: `linewright:/rule/${finding.code}.md` } } : {}),
    message: diagnosticText(finding),
    ...(related.length > 0 ? { relatedInformation: related } : {}),
  };
}
