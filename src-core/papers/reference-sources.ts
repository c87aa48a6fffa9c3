import '../mechanics/all.ts';
import { calculations } from '../mechanics/define-calculation.ts';
import { builtInPractice, notPublished } from '../trade/built-in-practice.ts';
import * as gearSources from '../trade/gear-sources.ts';
import * as planSources from '../trade/plan-sources.ts';
import * as pullSources from '../trade/pull-sources.ts';
import type { Source, Trust } from '../trade/source.ts';
import { sources } from '../trade/sources.ts';
import { contents, page, table } from './reference-text.ts';

interface UsedSource {
  readonly source: Source;
  readonly usedBy: readonly string[];
}

const isSource = (value: unknown): value is Source => typeof value === 'object' && value !== null && 'key' in value && 'title' in value && 'trust' in value;

/** Every source by its key, with the calculations and the built-in values that rest on it. */
export function allSources(): readonly UsedSource[] {
  const found = new Map<string, { source: Source; usedBy: Set<string> }>();
  const add = (source: Source, by?: string): void => {
    const entry = found.get(source.key) ?? { source, usedBy: new Set<string>() };
    if (by !== undefined) entry.usedBy.add(by);
    found.set(source.key, entry);
  };
  for (const source of [...Object.values(sources), ...[gearSources, planSources, pullSources].flatMap((m) => Object.values(m)).filter(isSource), ...Object.values(notPublished)]) add(source);
  for (const calculation of calculations().values()) {
    for (const source of calculation.sources) add(source, calculation.calculationName);
    for (const { source } of calculation.worked) add(source, calculation.calculationName);
  }
  for (const value of builtInPractice) add(value.source, `practice ${value.key}`);
  return [...found.values()].map(({ source, usedBy }) => ({ source, usedBy: [...usedBy].sort() })).sort((a, b) => (a.source.key < b.source.key ? -1 : 1));
}

const kindsOfTrust: readonly (readonly [Trust, title: string, says: string])[] = [
  ['read', 'Documents that were read', 'Read in the named document, or in a public copy of that page.'],
  ['secondary', 'Documents read in others', 'Read in a document that quotes the named one.'],
  ['memory', 'From memory', 'Well known in the trade, and not read again.'],
  ['practice', 'Common practice', 'What is done; no document stands behind it.'],
  ['own', 'Our own careful choices', 'No figure was found, so a careful one was chosen, for the reason given.'],
  ['derived', 'Mechanics and arithmetic', 'Anybody can check these by hand.'],
];

/** Every source of a figure, by how well it is known. */
export function sourcesReference(): string {
  const all = allSources();
  return page([
    '# Sources',
    'Where the figures come from, and how well each is known. No figure here is better than its source.',
    contents(kindsOfTrust.map(([, title]) => title)),
    ...kindsOfTrust.flatMap(([trust, title, says]) => [
      `## ${title}`,
      says,
      table(['source', 'used by'], all.filter((s) => s.source.trust === trust).map(({ source, usedBy }) => [source.title, usedBy.length === 0 ? 'rules and assessment' : usedBy.join(', ')])),
    ]),
  ]);
}
