import type { Finding } from '../assess/finding.ts';
import type { Place } from '../base/span.ts';
import type { BoundBlock } from '../model/bound.ts';
import type { RigFile } from '../project.ts';
import { Chunk } from '../syntax/chunk.ts';
import type { Statement } from '../syntax/tree.ts';
import { textDigest } from './text-digest.ts';

/** What a block is called: `line main`. */
export const blockTitle = (block: BoundBlock): string => (block.name === undefined ? block.definition.head : `${block.definition.head} ${block.name}`);

/** The block in which a place of a file stands. */
export function blockAt(file: RigFile, place: Place): BoundBlock | undefined {
  const index = file.indexOf(place.chunk);
  return index === undefined ? undefined : file.bound[index]?.blocks.find((b) => b.place.start <= place.start && place.end <= b.place.end);
}

/** What stands at a place, its words one space apart. */
export const writtenText = ({ chunk, start, end }: Place): string => (chunk instanceof Chunk ? chunk.text.slice(start, end).trim().replace(/\s+/g, ' ') : '');

/** The innermost statement at a place, its words one space apart: what stays the same when lines move or are laid out anew. */
export function statementText(place: Place): string {
  if (!(place.chunk instanceof Chunk)) return '';
  let found: Statement | undefined;
  let among: readonly Statement[] = place.chunk.tree.statements;
  for (;;) {
    const inner = among.find((s) => s.start <= place.start && place.start <= s.end);
    if (inner === undefined) break;
    found = inner;
    among = inner.block?.statements ?? [];
  }
  return found === undefined ? '' : found.tokens.map((t) => t.text).join(' ');
}

export interface IdentifiedFinding {
  readonly finding: Finding;
  readonly block: BoundBlock | undefined;
  /** The same from one version of a file to the next while rule, block and statement are the same. */
  readonly identity: string;
}

/** What a finding is known by, without a line number: rule, block and statement. Findings alike share it. */
export function identityKey(file: RigFile, finding: Finding): { readonly block: BoundBlock | undefined; readonly key: string } {
  const block = blockAt(file, finding.place);
  return { block, key: JSON.stringify([finding.code, block === undefined ? '' : blockTitle(block), statementText(finding.place)]) };
}

/** Gives each key of one file, in the order of its findings, an identity that also says which of several alike it is. */
export function identities(keys: readonly string[]): string[] {
  const seen = new Map<string, number>();
  return keys.map((key) => {
    const occurrence = (seen.get(key) ?? 0) + 1;
    seen.set(key, occurrence);
    return textDigest(`${key}\n${occurrence}`);
  });
}

/** Tells findings of one file apart without a line number: by rule, block, statement, and which of several it is. */
export function identified(file: RigFile, findings: readonly Finding[]): IdentifiedFinding[] {
  const known = findings.map((finding) => ({ finding, ...identityKey(file, finding) }));
  const made = identities(known.map(({ key }) => key));
  return known.map(({ finding, block }, i) => ({ finding, block, identity: made[i]! }));
}
