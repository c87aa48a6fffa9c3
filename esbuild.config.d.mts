export interface Bundle {
  readonly entry: string;
  readonly out: string;
}
export const bundles: Readonly<Record<string, Bundle>>;
/** What of one source file stands in a bundle. */
interface Metafile {
  readonly outputs: Readonly<Record<string, { readonly inputs: Readonly<Record<string, { readonly bytesInOutput: number }>> }>>;
}
export interface MadeBundle {
  readonly name: string;
  readonly out: string;
  readonly bytes: Uint8Array;
  readonly metafile: Metafile;
}
/** Makes the named bundles (all, when none is named) with those that they need, and writes nothing. */
export function makeBundles(names?: readonly string[], options?: { readonly minify?: boolean }): Promise<MadeBundle[]>;
/** Builds the named bundles (all, when none is named) into a folder, by default this one, and answers with the files written. */
export function buildBundles(names?: readonly string[], options?: { readonly minify?: boolean; readonly folder?: string }): Promise<string[]>;
export function missingEntries(): string[];
