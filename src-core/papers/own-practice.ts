import { isBeyondBorder, practiceFigure } from '../assess/practice-border.ts';
import { show } from '../assess/show.ts';
import { textOf } from '../model/bound.ts';
import { practiceKeyOf } from '../rules/practice-given-twice.ts';
import { builtInFor, isMilder } from '../rules/practice-without-source.ts';
import { exactly } from '../units/amount.ts';
import { assessingOf, type PaperSubject } from './paper-subject.ts';

/** Figures by which a line is loaded, and not looked at or spliced. */
const ofLoads: ReadonlySet<string> = new Set(['line-factor', 'design-factor', 'keep-wraps', 'fleet-angle-most', 'fleet-angle-least', 'sheave-loss']);

/**
 * What the shop's own practice makes milder than it is built in, as one sentence for whoever acts on a paper; nothing where it makes nothing so. On a paper of the
 * line alone only what bears on the line.
 */
export function ownPractice(subject: Pick<PaperSubject, 'root'>, { ofLine = false } = {}): string[] {
  const said = assessingOf(subject).reader.practices().flatMap(({ statements }) => statements.flatMap((statement) => {
    const [builtIn, figure] = [builtInFor(statement), practiceFigure(statement)];
    if (builtIn === undefined || figure === undefined || statement.broken.size > 0 || (ofLine && ofLoads.has(statement.definition.head)) || isBeyondBorder(statement) || !isMilder(figure, builtIn)) return [];
    const [own, usual] = [exactly(figure), builtIn.amount].map((amount) => show({ amount, kind: builtIn.kind, origin: { from: 'constant', source: builtIn.source } }));
    return [`${practiceKeyOf(statement)} ${own} where ${usual} is built in (${textOf(statement.values, 'note') ?? 'nothing says why'})`];
  }));
  return said.length === 0 ? [] : [`By the shop's own practice milder figures count: ${said.join('; ')}.`];
}
