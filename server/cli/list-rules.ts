import { rules } from '../../src-core/rules/all.ts';
import { wrapIndented } from '../../src-core/papers/wrap-text.ts';
import { exit, Refusal, type ExitCode, type Io } from './io.ts';
import type { Words } from './options.ts';
import { plainJson } from './plain-text.ts';

/** Lists every rule with its severity and what it finds. */
export function listRules(words: Words, io: Io): ExitCode {
  const [extra] = words.rest;
  if (extra !== undefined) throw new Refusal(`this takes no \`${extra}\``, 'linewright explain CODE tells about one rule');
  const sorted = [...rules].sort((a, b) => (a.name < b.name ? -1 : 1));
  if (words.option('format') === 'json') {
    // { version, rules: [{ name, severity, summary, why, source, citesRating }] }
    io.out(plainJson({ version: 1, rules: sorted.map(({ name, severity, summary, why, source, citesRating }) => ({ name, severity, summary, why, source, citesRating: citesRating === true })) }));
    return exit.nothingFound;
  }
  for (const { name, severity, summary } of sorted) io.out([`${name} (${severity})`, ...wrapIndented(summary, 96, '    ', '    '), ''].join('\n'));
  io.out(`\n${sorted.length} rules. linewright explain CODE tells why, with the source and an example.\n`);
  return exit.nothingFound;
}
