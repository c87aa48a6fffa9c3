import { forcedColours, palettes, type Palette, type Role } from './palette.ts';

const variables = (palette: Palette): string => Object.entries(palette).map(([role, colour]) => `--lw-${role}:${colour}`).join(';');

// What cannot read custom properties, such as a converter to a bitmap, takes the light colour that stands before it.
const colour = (property: 'fill' | 'stroke', role: Role): string => `${property}:${palettes.light[role]};${property}:var(--lw-${role},${palettes.light[role]})`;
const fill = (role: Role): string => colour('fill', role);
const stroke = (role: Role, width: number, more = ''): string => `fill:none;${colour('stroke', role)};stroke-width:${width}${more}`;

const font = 'font-family:system-ui,-apple-system,"Segoe UI","Noto Sans",Arial,sans-serif;font-variant-numeric:tabular-nums';

const rules = (): Readonly<Record<string, string>> => ({
  paper: fill('paper'),
  panel: fill('panel'),
  ink: fill('ink'),
  rope: fill('rope'),
  inlay: fill('rope-inlay'),
  splice: fill('splice'),
  caution: fill('caution'),
  alarm: fill('alarm'),
  mute: fill('unknown'),
  't-title': `${fill('ink')};${font};font-size:20px;font-weight:650`,
  't-lead': `${fill('ink')};${font};font-size:14px;font-weight:600`,
  't-body': `${fill('ink')};${font};font-size:13px`,
  't-strong': `${fill('ink')};${font};font-size:13px;font-weight:650`,
  't-quiet': `${fill('quiet')};${font};font-size:12px`,
  // Labels may cross a guide line: a rim of paper keeps them readable.
  'on-paper': `paint-order:stroke;${colour('stroke', 'paper')};stroke-width:4px;stroke-linejoin:round`,
  'on-panel': `paint-order:stroke;${colour('stroke', 'panel')};stroke-width:4px;stroke-linejoin:round`,
  's-ink': stroke('ink', 1.5),
  's-thin': stroke('quiet', 1),
  's-grid': stroke('grid', 1),
  's-rope': stroke('rope', 2),
  's-inlay': stroke('rope-inlay', 1.5),
  's-splice': stroke('splice', 1.5),
  's-eye': stroke('rope', 16),
  's-strength': stroke('strength', 2.5, ';stroke-linejoin:round'),
  's-caution': stroke('caution', 2),
  's-alarm': stroke('alarm', 2),
  's-mute': stroke('unknown', 1.5),
  's-dashed': `${stroke('ink', 1.5)};stroke-dasharray:6 4`,
  's-limit': `${stroke('alarm', 2)};stroke-dasharray:9 4`,
  's-dots': `${stroke('unknown', 1.5)};stroke-dasharray:2 3`,
  hollow: `${fill('paper')};${colour('stroke', 'ink')};stroke-width:1.5`,
});

let made: { readonly style: string; readonly classes: ReadonlySet<string> } | undefined;

/** Put together for the first picture. */
function make(): { readonly style: string; readonly classes: ReadonlySet<string> } {
  const byClass = rules();
  return {
    style: [
      `.lw{${variables(palettes.light)};max-width:100%;height:auto}`,
      `@media (prefers-contrast:more){.lw{${variables(palettes['high-contrast-light'])}}}`,
      `@media screen and (prefers-color-scheme:dark){.lw{${variables(palettes.dark)}}}`,
      `@media screen and (prefers-color-scheme:dark) and (prefers-contrast:more){.lw{${variables(palettes['high-contrast-dark'])}}}`,
      `.vscode-light .lw{${variables(palettes.light)}}`,
      `.vscode-dark .lw{${variables(palettes.dark)}}`,
      `.vscode-high-contrast .lw{${variables(palettes['high-contrast-dark'])}}`,
      `.vscode-high-contrast-light .lw{${variables(palettes['high-contrast-light'])}}`,
      `@media (forced-colors:active){.lw.lw{${variables(forcedColours)}}}`,
      ...Object.entries(byClass).map(([name, rule]) => `.lw .${name}{${rule}}`),
    ].join('\n'),
    classes: new Set(['lw', ...Object.keys(byClass)]),
  };
}

/**
 * One style for all pictures, the same to the byte, so that a strict page can allow it by one hash. It follows the
 * reader's settings, and the theme classes of an editor's page where there are any; print is always light.
 */
export const pictureStyle = (): string => (made ??= make()).style;

/** Every class that a part of a picture may carry. */
export const pictureClasses = (): ReadonlySet<string> => (made ??= make()).classes;
