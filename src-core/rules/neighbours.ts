import type { AssessedChain, AssessedLink } from '../assess/assess-chain.ts';

/** Everything that is joined to a link, each once, in the order of the file. */
export function neighboursOf(chain: AssessedChain, link: AssessedLink): AssessedLink[] {
  const found = new Map<string, AssessedLink>();
  for (const { first, second } of chain.joints) {
    const other = first.key === link.key ? second : second.key === link.key ? first : undefined;
    if (other !== undefined && !found.has(other.key)) found.set(other.key, other);
  }
  return [...found.values()];
}

/** `a`, `b` and `c`. */
export function listed(links: readonly AssessedLink[]): string {
  const names = links.map((link) => `\`${link.name}\``);
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)!}`;
}
