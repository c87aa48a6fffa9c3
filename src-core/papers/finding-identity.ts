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

/** Tells findings of one file apart without a line number: by rule, block, statement, and which of several it is. */
export function identified(file: RigFile, findings: readonly Finding[]): IdentifiedFinding[] {
  const seen = new Map<string, number>();
  return findings.map((finding) => {
    const block = blockAt(file, finding.place);
    const key = JSON.stringify([finding.code, block === undefined ? '' : blockTitle(block), statementText(finding.place)]);
    const occurrence = (seen.get(key) ?? 0) + 1;
    seen.set(key, occurrence);
    return { finding, block, identity: textDigest(`${key}\n${occurrence}`) };
  });
}
