/** What a colour is for. A mark always carries its meaning in its shape, its pattern or its label as well. */
export type Role = 'paper' | 'panel' | 'ink' | 'quiet' | 'grid' | 'rope' | 'rope-inlay' | 'splice' | 'strength' | 'caution' | 'alarm' | 'unknown';

export type Palette = Readonly<Record<Role, string>>;
export type ThemeName = 'light' | 'dark' | 'high-contrast-light' | 'high-contrast-dark';

export const palettes: Readonly<Record<ThemeName, Palette>> = {
  light: {
    paper: '#fcfbf8', panel: '#efede6', ink: '#1c2730', quiet: '#505c66', grid: '#cfccc2',
    rope: '#2b6a6c', 'rope-inlay': '#d8e8e4', splice: '#4a4a9c', strength: '#24506e', caution: '#8a5200', alarm: '#a8261c', unknown: '#6b6f76',
  },
  dark: {
    paper: '#171c20', panel: '#242b31', ink: '#e9edef', quiet: '#b0bac2', grid: '#3b454d',
    rope: '#72bdb6', 'rope-inlay': '#1d3f40', splice: '#aeb0f5', strength: '#8ec5e8', caution: '#efb04c', alarm: '#ff8f80', unknown: '#a3a9b0',
  },
  'high-contrast-light': {
    paper: '#ffffff', panel: '#ffffff', ink: '#000000', quiet: '#20262b', grid: '#8a8a8a',
    rope: '#004b4d', 'rope-inlay': '#ffffff', splice: '#1f1f8f', strength: '#003a66', caution: '#693c00', alarm: '#8f0000', unknown: '#444444',
  },
  'high-contrast-dark': {
    paper: '#000000', panel: '#000000', ink: '#ffffff', quiet: '#e4e4e4', grid: '#8a8a8a',
    rope: '#5ff0e0', 'rope-inlay': '#000000', splice: '#c9caff', strength: '#8fdcff', caution: '#ffc24d', alarm: '#ff9d90', unknown: '#d0d0d0',
  },
};

/** Roles that text is set in, and what it may stand on. */
export const textRoles: readonly Role[] = ['ink', 'quiet'];
/** Roles of marks that mean something. `grid` only guides the eye: every line of it has a label at its end. */
export const markRoles: readonly Role[] = ['ink', 'quiet', 'rope', 'splice', 'strength', 'caution', 'alarm', 'unknown'];
export const groundRoles: readonly Role[] = ['paper', 'panel'];

/** System colours for forced colours, where the reader's own choice goes before ours. */
export const forcedColours: Palette = {
  paper: 'Canvas', panel: 'Canvas', ink: 'CanvasText', quiet: 'CanvasText', grid: 'GrayText', rope: 'CanvasText', 'rope-inlay': 'Canvas', splice: 'CanvasText', strength: 'CanvasText', caution: 'CanvasText', alarm: 'CanvasText', unknown: 'CanvasText',
};
