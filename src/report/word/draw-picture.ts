import { FALLBACK_FAMILY, fallbackFonts, inReportFace, TEXT_FAMILY, textFonts } from "../fonts.ts";
import { encodePalettePng } from "./encode-png.ts";

/** A drawing as dots. */
export interface Picture {
  readonly png: Buffer;
  readonly width: number;
  readonly height: number;
}

/** Width of a drawing on paper, and dots that print it sharply at 170 to the inch. */
export const PICTURE_WIDTH = 1200;

/** Makes dots of drawings, all with the face of the report. */
export async function pictureMaker(): Promise<(svg: string, width?: number) => Picture> {
  const { Resvg } = await import("@resvg/resvg-js");
  const [regular, , , bold] = textFonts();
  const fontFiles = [regular!, bold!];
  const allFiles = [...fontFiles, ...fallbackFonts().slice(0, 2)];
  return (svg, width = PICTURE_WIDTH) => {
    const drawn = new Resvg(inReportFace(svg), {
      fitTo: { mode: "width", value: width },
      background: "#FFFFFF",
      font: {
        loadSystemFonts: false,
        fontFiles: needsFallback(svg) ? allFiles : fontFiles,
        defaultFontFamily: TEXT_FAMILY,
        sansSerifFamily: FALLBACK_FAMILY,
      },
    }).render();
    const { width: across, height } = drawn;
    return { png: encodePalettePng(drawn.pixels, across, height) ?? drawn.asPng(), width: across, height };
  };
}

/** Signs outside of Latin, Greek and Cyrillic and the punctuation of drawings: rare, and slow to have ready for every drawing. */
const needsFallback = (svg: string): boolean =>
  /[^\n -\u052F\u2010-\u2027\u2030-\u205E\u2190-\u2193\u2212\u221A\u221E\u2248\u2264\u2265]/u.test(svg);
