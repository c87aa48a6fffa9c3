import type { Finding, Severity } from '../../../src-core/assess/finding.ts';
import { findingJson, type FindingJson } from '../../../src-core/papers/finding-json.ts';
import { findingText } from '../../../src-core/papers/finding-text.ts';
import { githubAnnotation, type Annotation } from '../../../src-core/papers/github-annotations.ts';
import type { Locate } from '../../../src-core/papers/locate.ts';
import { sarifDraft, type SarifDraft } from '../../../src-core/papers/sarif.ts';
import type { RigFile } from '../../../src-core/project.ts';
import { strongFor } from '../io.ts';

/** What each format tells of a finding: plain data, which one thread may hand to another. */
export interface Forms {
  readonly text: string;
  readonly json: FindingJson;
  readonly sarif: SarifDraft;
  readonly github: Annotation;
}
export type Format = keyof Forms;

/** How findings are told. */
export interface Telling {
  readonly format: Format;
  readonly width: number | undefined;
  readonly styled: boolean;
}

/** A finding with what it is told as, and what orders it among the findings of its file. */
export interface Told {
  readonly start: number;
  readonly end: number;
  readonly code: string;
  readonly message: string;
  readonly severity: Severity;
  readonly form: Forms[Format];
}

export function tell(file: RigFile, finding: Finding, locate: Locate, telling: Telling): Told {
  const { start, end } = file.spanOf(finding.place)!;
  const { code, message, severity } = finding;
  return { start, end, code, message, severity, form: formOf(file, finding, locate, telling) };
}

function formOf(file: RigFile, finding: Finding, locate: Locate, { format, width, styled }: Telling): Forms[Format] {
  if (format === 'json') return findingJson(finding, locate);
  if (format === 'sarif') return sarifDraft(file, finding, locate);
  if (format === 'github') return githubAnnotation(finding, locate);
  return `${findingText(finding, locate, width, strongFor({ styled })).join('\n')}\n\n`;
}

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Findings of a file that several roots take in: each once, as the first root has it, by place, code and message. */
export class ToldOnce {
  readonly #told = new Map<string, { readonly rank: number; readonly told: Told }>();

  add(rank: number, list: readonly Told[]): void {
    for (const told of list) {
      const key = JSON.stringify([told.start, told.end, told.code, told.message]);
      const known = this.#told.get(key);
      if (known === undefined || rank < known.rank) this.#told.set(key, { rank, told });
    }
  }

  inOrder(): Told[] {
    return [...this.#told.values()].map(({ told }) => told).sort((a, b) => a.start - b.start || a.end - b.end || compareText(a.code, b.code) || compareText(a.message, b.message));
  }
}
