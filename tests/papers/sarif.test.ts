import { createRequire } from 'node:module';
import Ajv, { type ErrorObject } from 'ajv';
import { expect, test } from 'vitest';
import { readDay } from '../../src-core/model/day.ts';
import { githubAnnotations } from '../../src-core/papers/github-annotations.ts';
import { locateIn } from '../../src-core/papers/locate.ts';
import { sarifLog, type SarifResult } from '../../src-core/papers/sarif.ts';
import { projectOf, type Texts } from '../support/judge-text.ts';
import { example, hostileRig, paperDay, plover } from './papers-of.ts';

// The published schema of the format, as the package carries it. It is of draft 4, of which this much is known to the checker.
const schema = createRequire(import.meta.url)('@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json') as Record<string, unknown>;
const { id: _id, $schema: _draft, ...rest } = schema;
const ajv = new Ajv({ schemaId: 'auto', unknownFormats: 'ignore', allErrors: true });
const validate = ajv.compile(rest);

interface Log {
  readonly version: string;
  readonly runs: readonly { readonly tool: { readonly driver: { readonly rules: readonly { readonly id: string; readonly help: { readonly text: string; readonly markdown: string } }[] } }; readonly results: readonly SarifResult[]; readonly invocations: readonly { readonly executionSuccessful: boolean }[] }[];
}

const errors = (log: unknown): ErrorObject[] => (validate(log) === true ? [] : (validate.errors ?? []));

function log(texts: Texts, problems: readonly { path: string; says: string }[] = []): Log {
  const project = projectOf(texts);
  const files = [...project.paths].map((path) => project.file(path)!);
  const locate = locateIn(files);
  const made = sarifLog(files.map((file) => ({ file, findings: project.findings(file.path, readDay(paperDay)!), locate })), { version: '1.2.3', day: paperDay, problems });
  return JSON.parse(JSON.stringify(made)) as Log;
}

const everyRig: readonly [string, Texts][] = [
  ['plover', plover()],
  ['wheatear', example('wheatear.rig')],
  ['hostile', hostileRig],
  ['empty', ''],
  ['broken', 'line {\n  length 3\n  use "x"\nuse "gone.rig"\n}}'],
  ['odd names', { 'a folder/ö #1?.rig': 'line main {\n  breaking\n}\n', '/abs/b.rig': 'anchor {\n', 'c:\\d.rig': 'x\n' }],
];

test('the check sees what is wrong', () => {
  expect(errors({ version: '2.1.0', runs: [{ results: [] }] })).not.toEqual([]);
  const made = log(plover());
  expect(errors({ ...made, runs: [{ ...made.runs[0], results: [{ ...made.runs[0]!.results[0], level: 'information' }] }] })).not.toEqual([]);
});

test.each(everyRig)('%s is valid against the published schema', (_name, texts) => {
  expect(errors(log(texts, [{ path: 'x y.rig', says: 'cannot be read' }]))).toEqual([]);
});

test('every rule that speaks is there with why, source and both examples', () => {
  const { tool, results } = log(plover()).runs[0]!;
  expect(new Set(tool.driver.rules.map((r) => r.id))).toEqual(new Set(results.map((r) => r.ruleId)));
  for (const result of results) expect(tool.driver.rules[result.ruleIndex!]!.id).toBe(result.ruleId);
  for (const { help } of tool.driver.rules) {
    expect(help.text).toMatch(/Why: .+\n\nSource: .+[\s\S]*Found in:\n\n.+[\s\S]*Not found in:\n\n.+/);
    expect(help.markdown.match(/^```rig$/gm)).toHaveLength(2);
  }
});

test('what fed a finding is related to it, and its fix is a replacement', () => {
  const found = log(plover()).runs[0]!.results.find((r) => r.ruleId === 'bury-too-short')!;
  expect(found.relatedLocations!.map((l) => l.message.text)).toContain('line diameter');
  expect(found.locations[0]!.logicalLocations).toEqual([{ name: 'field-fix', fullyQualifiedName: 'repair field-fix', kind: 'repair' }]);
  expect(found.fixes![0]!.artifactChanges[0]!.replacements[0]!.insertedContent).toEqual({ text: '72 cm' });
});

const prints = (texts: Texts): string[] => log(texts).runs[0]!.results.map((r) => `${r.ruleId} ${r.partialFingerprints['linewright/v1']}`).sort();
const changed = (change: (text: string) => string): Texts => Object.fromEntries(Object.entries(plover()).map(([p, t]) => [p, change(t)]));

test('fingerprints tell findings apart, and stay while lines move and are laid out anew', () => {
  const before = prints(plover());
  expect(new Set(before).size).toBe(before.length);
  expect(prints(changed((t) => `# a comment\n\n${t}`))).toEqual(before);
  expect(prints(changed((t) => t.replaceAll(/ {2,}(?=\S)/g, '  ')))).toEqual(before);
  expect(prints(changed((t) => t.replace('bury 46 cm', 'bury 47 cm')))).not.toEqual(before);
});

test('what could not be read is told, and the run was then none that succeeded', () => {
  expect(log('', [{ path: 'a.rig', says: 'is not text in UTF-8' }]).runs[0]!.invocations[0]!.executionSuccessful).toBe(false);
  expect(log('').runs[0]!.invocations[0]!.executionSuccessful).toBe(true);
});

function annotations(texts: Texts): string[] {
  const project = projectOf(texts);
  const files = [...project.paths].map((path) => project.file(path)!);
  const locate = locateIn(files);
  return githubAnnotations(files.flatMap((f) => project.findings(f.path, readDay(paperDay)!).map((finding) => ({ finding, locate }))));
}

test('annotations are one line each, and no text ends one or begins another', () => {
  const lines = annotations({ 'a,b:c%.rig': hostileRig, ...(plover() as Record<string, string>) });
  for (const line of lines) expect(line).toMatch(/^::(error|warning|notice) (file=[^,:]+,line=\d+,endLine=\d+,(col=\d+,endColumn=\d+,)?)?title=[a-z-]+::[^\n\r]+$/);
  expect(lines.some((line) => line.includes('file=a%2Cb%3Ac%25.rig,'))).toBe(true);
});

test('ten of a kind are shown, and of more nine and how many they are', () => {
  const rigs = (n: number): string => Array.from({ length: n }, (_, i) => `line l${i} {\n  breaking\n}\n`).join('');
  const errorsOf = (n: number): string[] => annotations(rigs(n)).filter((line) => line.startsWith('::error'));
  expect(errorsOf(10)).toHaveLength(10);
  expect(errorsOf(10).at(-1)).toContain('file=');
  expect(errorsOf(31)).toHaveLength(10);
  expect(errorsOf(31).at(-1)).toBe('::error title=linewright::and 22 more of this kind: linewright check shows all');
});
