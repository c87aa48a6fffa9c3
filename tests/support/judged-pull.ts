import type { AssessedPull } from '../../src-core/assess/assess-pull.ts';
import { show } from '../../src-core/assess/show.ts';
import { isUnknown, type Value } from '../../src-core/mechanics/derivation.ts';
import { readDay } from '../../src-core/model/day.ts';
import { Project } from '../../src-core/project.ts';
import type { JudgedBlock } from '../../src-core/rules/judge-block.ts';

const day = readDay('2026-07-01')!;

/** A rig read and judged as of 2026-07-01. */
export function judgedRig(text: string) {
  const project = new Project();
  project.set('example.rig', text);
  const root = project.judge('example.rig', day);
  const file = root.files.get('example.rig')!;
  const codes = file.findings.map((finding) => finding.code);
  const block = (head: string, name?: string): JudgedBlock => {
    const found = file.blocks.find((b) => b.block.definition.head === head && (name === undefined || b.block.name === name));
    if (found === undefined) throw new Error(`the rig has no ${head} ${name ?? ''}`);
    return found;
  };
  return { root, file, findings: file.findings, codes, block, messages: file.findings.map((finding) => finding.message) };
}

export function judgedPull(text: string): AssessedPull {
  const { assessed } = judgedRig(text).block('pull');
  if (assessed.kind !== 'pull') throw new Error('the pull was not assessed');
  return assessed;
}

/** A value as people read it, or why it is not known. */
export const shown = (value: Value): string => (isUnknown(value) ? `not known: ${value.unknown.says}` : show(value));

export const loadOn = (pull: AssessedPull, name: string, sort?: string): string => {
  const found = pull.loaded.find((loaded) => loaded.name === name && (sort === undefined || loaded.sort === sort));
  return found === undefined ? 'not loaded' : shown(found.load);
};
