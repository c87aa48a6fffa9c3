import { examplePath, type Rule } from '../rules/rule.ts';
import { whyItStays, whyNotLowered } from '../rules/why-it-stays.ts';
import { listOfWords, rigFence } from './reference-text.ts';

const article = (severity: Rule['severity']): string => (severity === 'information' ? 'information' : `${/^[aeiou]/.test(severity) ? 'an' : 'a'} ${severity}`);

/** Whether a finding of the rule can be set aside, and how. */
export const setAsideText = (rule: Rule): string =>
  whyItStays(rule) !== undefined
    ? `It ${whyItStays(rule)!}, so nothing sets it aside and no practice lowers it.`
    : `A written reason sets it aside: \`# allow ${rule.name}: why it is right here\`, on the line or above it.${whyNotLowered(rule) === undefined ? '' : ` It ${whyNotLowered(rule)!}, so no practice lowers it everywhere.`}`;

/** The page of a rule as Markdown: what it finds, why that matters, on whose word, and an example of each kind. */
export function rulePage(rule: Rule, level: 1 | 2 = 1): string {
  const beside = Object.entries(rule.files ?? {});
  const head = (text: string): string => (level === 1 ? `## ${text}` : `**${text}**`);
  const judgedOn = rule.exampleDay === undefined ? [] : [`Both examples are judged as of ${rule.exampleDay}.`];
  return [
    `${'#'.repeat(level)} ${rule.name}`,
    rule.summary,
    `Shown as ${article(rule.severity)}, because ${rule.why}.`,
    `Source: ${rule.source}`,
    setAsideText(rule),
    head('Found in'),
    rigFence(rule.bad),
    head('Not found in'),
    rigFence(rule.good),
    ...judgedOn,
    ...(beside.length === 0 ? [] : [`The examples stand in \`${examplePath}\`, beside ${listOfWords(beside.map(([path]) => `\`${path}\``))}:`, ...beside.map(([, text]) => rigFence(text))]),
  ].join('\n\n') + '\n';
}
