import type { Severity } from '../../../src-core/assess/finding.ts';
import type { FindingJson } from '../../../src-core/papers/finding-json.ts';
import { Annotations, data, type Annotation } from '../../../src-core/papers/github-annotations.ts';
import { sarifOfDrafts, type SarifDraft } from '../../../src-core/papers/sarif.ts';
import { plainJson } from '../plain-text.ts';
import { version } from '../version.ts';
import type { Counts } from './root-judge.ts';
import type { Format, Forms, Told } from './tell.ts';

/** What `linewright check --format json` prints. `version` changes when a reader of it would have to. */
export interface CheckJson {
  readonly version: 1;
  readonly day: string;
  /** Every file that was read, those that others use included. */
  readonly files: readonly string[];
  readonly findings: readonly FindingJson[];
  /** What could not be checked. */
  readonly problems: readonly Unchecked[];
  readonly severities: Readonly<Record<Severity, number>>;
  readonly checks: Counts;
}

export interface Unchecked {
  readonly path: string;
  readonly says: string;
}

/** What is known once everything is judged. */
export interface Whole {
  readonly day: string;
  readonly files: readonly string[];
  readonly problems: readonly Unchecked[];
  readonly severities: Readonly<Record<Severity, number>>;
  readonly checks: Counts;
  readonly summary: string;
}

/** Tells findings in one format: file by file as they come, and what is left at the end. */
export interface Report {
  file(told: readonly Told[]): void;
  end(whole: Whole): void;
}

const formsOf = <F extends Format>(told: readonly Told[]): readonly Forms[F][] => told.map(({ form }) => form as Forms[F]);

/** Text is told at once; a document of another format can be written only when all is known. `toProgram` writes what only a program reads. */
export const reports: Readonly<Record<Format, (out: (text: string) => void, toProgram: (text: string) => void) => Report>> = {
  text: (out) => ({
    file(told) {
      if (told.length > 0) out(formsOf<'text'>(told).join(''));
    },
    end: ({ summary }) => out(`${summary}\n`),
  }),
  json(out) {
    const findings: FindingJson[] = [];
    return {
      file: (told) => void findings.push(...formsOf<'json'>(told)),
      end({ day, files, problems, severities, checks }) {
        const json: CheckJson = { version: 1, day, files, findings, problems, severities, checks };
        out(plainJson(json));
      },
    };
  },
  sarif(out) {
    const files: (readonly SarifDraft[])[] = [];
    return {
      file(told) {
        if (told.length > 0) files.push(formsOf<'sarif'>(told));
      },
      end: ({ day, problems }) => out(plainJson(sarifOfDrafts(files, { version, day, problems }))),
    };
  },
  github(out, toProgram) {
    const annotations = new Annotations();
    return {
      file(told) {
        for (const form of formsOf<'github'>(told)) annotations.add(form as Annotation);
      },
      end({ problems, summary }) {
        // What finds the file by its name wants that name as it is.
        for (const line of annotations.lines()) toProgram(`${line}\n`);
        for (const { path, says } of problems) out(`::error title=linewright::${data(`${path} ${says}`)}\n`);
        out(`${summary}\n`);
      },
    };
  },
};
