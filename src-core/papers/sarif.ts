import type { Finding, Severity } from '../assess/finding.ts';
import type { RigFile } from '../project.ts';
import { rules } from '../rules/all.ts';
import type { Rule } from '../rules/rule.ts';
import { whyItStays } from '../rules/why-it-stays.ts';
import { cleanText } from './clean-text.ts';
import { codeSpan, escapeMarkdown } from './escape-markdown.ts';
import { blockTitle, identities, identityKey } from './finding-identity.ts';
import type { Locate, Location } from './locate.ts';

/** Findings of one file, as they are told. */
export interface FileFindings {
  readonly file: RigFile;
  readonly findings: readonly Finding[];
  readonly locate: Locate;
}

export interface SarifOptions {
  readonly version: string;
  /** The day that was judged. */
  readonly day: string;
  /** What could not be read at all. */
  readonly problems: readonly { readonly path: string; readonly says: string }[];
}

type Level = 'error' | 'warning' | 'note';
const levels: Record<Severity, Level> = { error: 'error', warning: 'warning', information: 'note', hint: 'note' };

interface Message {
  readonly text: string;
  readonly markdown?: string;
}
interface Region {
  readonly startLine: number;
  readonly startColumn: number;
  readonly endLine: number;
  readonly endColumn: number;
}
interface ArtifactLocation {
  readonly uri: string;
  readonly uriBaseId?: string;
}
interface PhysicalLocation {
  readonly artifactLocation: ArtifactLocation;
  readonly region: Region;
}

export interface SarifResult {
  readonly ruleId: string;
  readonly ruleIndex?: number;
  readonly level: Level;
  readonly message: Message;
  readonly locations: readonly { readonly physicalLocation: PhysicalLocation; readonly logicalLocations?: readonly { readonly name?: string; readonly fullyQualifiedName: string; readonly kind: string }[] }[];
  readonly relatedLocations?: readonly { readonly id: number; readonly physicalLocation: PhysicalLocation; readonly message: Message }[];
  readonly partialFingerprints: Readonly<Record<string, string>>;
  readonly fixes?: readonly { readonly description: Message; readonly artifactChanges: readonly { readonly artifactLocation: ArtifactLocation; readonly replacements: readonly { readonly deletedRegion: Region; readonly insertedContent?: { readonly text: string } }[] }[] }[];
  readonly properties: Readonly<Record<string, string>>;
}

/** A finding as a result that still lacks what depends on the others: its identity and the number of its rule. */
export interface SarifDraft {
  readonly code: string;
  readonly key: string;
  /** Undefined when the finding's place is in no file. */
  readonly result: SarifResult | undefined;
}

/** Drafts hold plain data, so that another thread may make them. */
export function sarifDraft(file: RigFile, finding: Finding, locate: Locate): SarifDraft {
  const { block, key } = identityKey(file, finding);
  return { code: finding.code, key, result: resultOf(finding, block === undefined ? undefined : { title: blockTitle(block), name: block.name, kind: block.definition.head }, locate) };
}

/** A log of findings as other tools read it: SARIF 2.1.0. The same rig on the same day gives the same bytes. */
export const sarifLog = (files: readonly FileFindings[], options: SarifOptions): object =>
  sarifOfDrafts(files.map(({ file, findings, locate }) => findings.map((finding) => sarifDraft(file, finding, locate))), options);

/** The log of drafts, which stand file by file. */
export function sarifOfDrafts(files: readonly (readonly SarifDraft[])[], { version, day, problems }: SarifOptions): object {
  // Only rules that speak here: their reasons and examples are long, and all of them are one command away.
  const codes = new Set(files.flatMap((drafts) => drafts.map((draft) => draft.code)));
  const sorted = rules.filter((rule) => codes.has(rule.name)).sort((a, b) => (a.name < b.name ? -1 : 1));
  const index = new Map(sorted.map((rule, i) => [rule.name, i]));
  const results = files.flatMap((drafts) => {
    const made = identities(drafts.map((draft) => draft.key));
    return drafts.map(({ code, result }, i) => (result === undefined ? undefined : finished(result, index.get(code), made[i]!)));
  });
  return {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'Linewright', semanticVersion: version, rules: sorted.map(ruleOf) } },
        columnKind: 'utf16CodeUnits',
        invocations: [
          {
            executionSuccessful: problems.length === 0,
            ...(problems.length === 0 ? {} : { toolExecutionNotifications: problems.map(({ path, says }) => ({ level: 'error', message: messageOf(`${path} ${says}`), locations: [{ physicalLocation: { artifactLocation: artifactAt(path) } }] })) }),
          },
        ],
        results: results.filter((r) => r !== undefined),
        properties: { judgedAsOf: day },
      },
    ],
  };
}

/** A bracket or a brace of ours is no link and no placeholder. */
const plain = (text: string): string => cleanText(text).replace(/\\/g, '\\\\').replace(/[[\]]/g, '\\$&').replace(/\{(?=\d+\})/g, '{{');
const messageOf = (text: string): Message => ({ text: plain(text) });

function ruleOf(rule: Rule): object {
  const stays = whyItStays(rule);
  const aside = stays === undefined ? `Set aside with a written reason: # allow ${rule.name}: why it is right here` : `It ${stays}, so it cannot be set aside.`;
  const fence = (text: string): string => `\`\`\`rig\n${text.trimEnd()}\n\`\`\``;
  return {
    id: rule.name,
    shortDescription: messageOf(rule.summary),
    fullDescription: messageOf(`${sentence(rule.why)} Source: ${sentence(rule.source)}`),
    help: {
      text: [rule.summary, `Why: ${rule.why}`, `Source: ${rule.source}`, aside, 'Found in:', rule.bad.trimEnd(), 'Not found in:', rule.good.trimEnd()].join('\n\n'),
      markdown: [escapeMarkdown(rule.summary), `**Why:** ${escapeMarkdown(rule.why)}`, `**Source:** ${escapeMarkdown(rule.source)}`, escapeMarkdown(aside), 'Found in', fence(rule.bad), 'Not found in', fence(rule.good)].join('\n\n'),
    },
    defaultConfiguration: { level: levels[rule.severity] },
    properties: { severity: rule.severity, citesRating: rule.citesRating === true },
  };
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1) + (text.endsWith('.') ? '' : '.');

/** Members keep the order in which the log shows them. */
const finished = ({ ruleId, ...rest }: SarifResult, ruleIndex: number | undefined, identity: string): SarifResult => ({
  ruleId,
  ...(ruleIndex === undefined ? {} : { ruleIndex }),
  ...rest,
  partialFingerprints: { 'linewright/v1': identity, primaryLocationLineHash: `${identity}:1` },
});

function resultOf(finding: Finding, block: { readonly title: string; readonly name: string | undefined; readonly kind: string } | undefined, locate: Locate): SarifResult | undefined {
  const at = locate(finding.place);
  if (at === undefined) return undefined;
  const related = finding.related.flatMap(({ place, message }, i) => {
    const spot = locate(place);
    return spot === undefined ? [] : [{ id: i + 1, physicalLocation: physical(spot), message: messageOf(message) }];
  });
  const fixes = finding.fixes.flatMap((fix) => {
    const changes = new Map<string, { deletedRegion: Region; insertedContent?: { text: string } }[]>();
    for (const edit of fix.edits) {
      const spot = locate(edit.place);
      if (spot === undefined) return [];
      const list = changes.get(spot.file) ?? [];
      list.push({ deletedRegion: regionOf(spot), ...(edit.text === '' ? {} : { insertedContent: { text: edit.text } }) });
      changes.set(spot.file, list);
    }
    return changes.size === 0 ? [] : [{ description: messageOf(fix.title), artifactChanges: [...changes].map(([file, replacements]) => ({ artifactLocation: artifactAt(file), replacements })) }];
  });
  return {
    ruleId: finding.code,
    level: levels[finding.severity],
    message: { text: plain(finding.message) + (finding.help === '' ? '' : `\nHelp: ${plain(finding.help)}`), markdown: `${namesAsCode(finding.message)}${finding.help === '' ? '' : `  \nHelp: ${namesAsCode(finding.help)}`}` },
    locations: [{ physicalLocation: physical(at), ...(block === undefined ? {} : { logicalLocations: [{ ...(block.name === undefined ? {} : { name: block.name }), fullyQualifiedName: block.title, kind: block.kind }] }) }],
    ...(related.length === 0 ? {} : { relatedLocations: related }),
    // A place held free: the identity is known once all findings of the file are.
    partialFingerprints: {},
    ...(fixes.length === 0 ? {} : { fixes }),
    properties: { severity: finding.severity, ...(finding.why === undefined ? {} : { why: finding.why }), ...(finding.source === undefined ? {} : { source: finding.source }) },
  };
}

const namesAsCode = (text: string): string => text.split(/`([^`]+)`/).map((t, i) => (i % 2 === 1 ? codeSpan(t) : escapeMarkdown(t))).join('');

const regionOf = ({ line, column, endLine, endColumn }: Location): Region => ({ startLine: line, startColumn: column, endLine, endColumn });
const physical = (at: Location): PhysicalLocation => ({ artifactLocation: artifactAt(at.file), region: regionOf(at) });

/** A path as an address: below the root of the sources, or absolute where it lies elsewhere. */
function artifactAt(path: string): ArtifactLocation {
  // The name itself, whatever is in it: only half of a pair of surrogates has no address.
  const parts = path.split(/[/\\]/).map((p) => encodeURIComponent(p.replace(/\p{Surrogate}/gu, '\uFFFD')));
  if (path.startsWith('/')) return { uri: `file://${parts.join('/')}` };
  if (/^[A-Za-z]:[/\\]/.test(path)) return { uri: `file:///${path.slice(0, 2)}/${parts.slice(1).join('/')}` };
  return { uri: parts.join('/'), uriBaseId: '%SRCROOT%' };
}
