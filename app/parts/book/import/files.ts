// Files that were dropped or chosen, as text, and which file of a season each most likely is.

export const SEASON_FILES = [
  'brews.csv',
  'tanks.csv',
  'yeasts.csv',
  'jars.csv',
  'counts.csv',
  'house.json',
] as const;
export type SeasonFile = (typeof SEASON_FILES)[number];

/** One file as it was brought; `as` is the file of a season that it is read as. */
export type Brought = { name: string; as: SeasonFile; text: string };

/** More than a season of thousands of brews; the server takes 8 MB in all. */
export const MOST_BYTES = 6_000_000;

/** The file of a season that a name speaks of: 'My brews 2027.csv' is brews.csv. */
export function seasonFileOf(name: string, otherwise: SeasonFile): SeasonFile {
  const last = name.split(/[\\/]/).at(-1)?.toLowerCase() ?? '';
  const exact = SEASON_FILES.find((file) => file === last);
  const alike = SEASON_FILES.find((file) => last.includes(file.replace(/s?\.\w+$/, '')));
  return exact ?? (last.endsWith('.json') ? 'house.json' : (alike ?? otherwise));
}

/** Bytes as text: UTF-8 or UTF-16, else as old Windows programs write. What is no text is for the server to say. */
export function decoded(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) {
    return new TextDecoder(first === 0xff ? 'utf-16le' : 'utf-16be').decode(bytes);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** Reads what was dropped. Two files cannot be the same file of a season: the later one counts. */
export async function broughtFiles(
  files: readonly File[],
  otherwise: SeasonFile,
): Promise<{ brought: Brought[]; tooLarge: string[] }> {
  const tooLarge = files.filter(({ size }) => size > MOST_BYTES).map(({ name }) => name);
  const brought = await Promise.all(
    files
      .filter(({ size }) => size <= MOST_BYTES)
      .map(async (file) => ({
        name: file.name,
        as: seasonFileOf(file.name, otherwise),
        text: decoded(new Uint8Array(await file.arrayBuffer())),
      })),
  );
  return { brought, tooLarge };
}
