import { createRequire } from "node:module";
import { dirname, join } from "node:path";

const require = createRequire(import.meta.url);
const folderOf = (name: string): string => dirname(require.resolve(`${name}/package.json`));

/** Faces of the text: the only ones a report is set in, so that it looks the same on every machine. */
export function textFonts(): readonly string[] {
  const folder = folderOf("@expo-google-fonts/source-sans-3");
  return ["400Regular", "400Regular_Italic", "600SemiBold", "700Bold"].map((face) =>
    join(folder, face, `SourceSans3_${face}.ttf`),
  );
}

/** Signs that the text face lacks, and digits of fingerprints. */
export function fallbackFonts(): readonly string[] {
  const folder = join(folderOf("dejavu-fonts-ttf"), "ttf");
  return ["DejaVuSans.ttf", "DejaVuSans-Bold.ttf", "DejaVuSansMono.ttf"].map((file) => join(folder, file));
}

export const TEXT_FAMILY = "Source Sans 3";
export const FALLBACK_FAMILY = "DejaVu Sans";

/** A drawing set in the face of the report instead of the one that it names. */
export const inReportFace = (svg: string): string =>
  svg.replaceAll('font-family="DejaVu Sans, sans-serif"', `font-family="${TEXT_FAMILY}, ${FALLBACK_FAMILY}"`);
