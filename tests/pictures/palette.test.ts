import { describe, expect, it } from 'vitest';
import { groundRoles, markRoles, palettes, textRoles, type ThemeName } from '../../src-core/pictures/palette.ts';
import { pictureStyle } from '../../src-core/pictures/picture-style.ts';

/** Relative luminance and contrast as WCAG 2.2 defines them. */
function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((i) => parseInt(colour.slice(i, i + 2), 16) / 255).map((v) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}
function contrast(a: string, b: string): number {
  const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light! + 0.05) / (dark! + 0.05);
}

describe.each(Object.keys(palettes) as ThemeName[])('the %s palette', (theme) => {
  const palette = palettes[theme];
  it.each(textRoles.flatMap((t) => groundRoles.map((g) => [t, g] as const)))('sets text %s on %s at 4.5 to 1', (text, ground) => {
    expect(contrast(palette[text], palette[ground])).toBeGreaterThanOrEqual(4.5);
  });
  it.each(markRoles.flatMap((m) => groundRoles.map((g) => [m, g] as const)))('sets mark %s on %s at 3 to 1', (mark, ground) => {
    expect(contrast(palette[mark], palette[ground])).toBeGreaterThanOrEqual(3);
  });
  it('shows the buried tail inside its splice, and damage outlines across the line, at 3 to 1', () => {
    expect(contrast(palette['rope-inlay'], palette.splice)).toBeGreaterThanOrEqual(3);
  });
  it('is written into the style', () => {
    for (const [role, colour] of Object.entries(palette)) expect(pictureStyle()).toContain(`--lw-${role}:${colour}`);
  });
});

describe('the style', () => {
  it('sets text in text roles only', () => {
    const rules = [...pictureStyle().matchAll(/\.lw \.(t-[a-z]+)\{fill:#[0-9a-f]+;fill:var\(--lw-([a-z]+),/g)];
    expect(rules.length).toBe(5);
    for (const [, , role] of rules) expect(textRoles).toContain(role);
  });
  it('sets no text smaller than 12', () => {
    const sizes = [...pictureStyle().matchAll(/font-size:(\d+)px/g)].map((m) => Number(m[1]));
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(12);
  });
  it('knows the contrast of black on white', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
  });
  it('holds nothing that a page would have to fetch, and no character that XML would have to escape', () => {
    expect(pictureStyle()).not.toMatch(/url\(|@import|[<&]/);
  });
});
