import type { BundledPackage } from './bundled-packages.ts';

/** The page that says of whom else something is in what we ship, and on what terms. One text for all that have the same. */
export function thirdPartyPage(packages: readonly BundledPackage[]): string {
  const groups = new Map<string, BundledPackage[]>();
  for (const one of packages) {
    if (one.text === undefined) throw new Error(`${one.name} brings no licence text`);
    const group = groups.get(one.text);
    if (group === undefined) groups.set(one.text, [one]);
    else group.push(one);
  }
  return [
    '# Packages of others in this one',
    '',
    'The shipped programs hold parts of these packages, on the terms that follow. Generated from what the build takes in; everything else is under `LICENSE`.',
    'The build joins and shortens them; from `toFastProperties` of @chevrotain/utils it cuts off a call that is never reached.',
    '',
    '| package | version | licence |',
    '| --- | --- | --- |',
    ...packages.map(({ name, version, licence }) => `| ${name} | ${version} | ${licence} |`),
    ...[...groups].flatMap(([text, group]) => ['', `## ${group.map(({ name }) => name).join(', ')}`, '', '```text', text, '```']),
    '',
  ].join('\n');
}
