export interface Bundle {
  readonly entry: string;
  readonly out: string;
}
export const bundles: Readonly<Record<string, Bundle>>;
/** Builds the named bundles (all, when none is named) and answers with the files written. */
export function buildBundles(names?: readonly string[], options?: { readonly minify?: boolean }): Promise<string[]>;
export function missingEntries(): string[];
