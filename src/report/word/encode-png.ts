import { deflateSync } from "node:zlib";
import { crc32 } from "#formats";

const SIGNATURE = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);
const MOST_COLOURS = 256;
/** Edges of lines have many shades; with five bits each they look the same in print. */
const MASKS: readonly number[] = [0xffffff, 0xf8f8f8, 0xf0f0f0];
/** Drawings are flat: more effort makes them no smaller. */
const LEVEL = 4;

/**
 * Dots as PNG with a palette: a quarter of the bytes to pack. No colour is lost where there are 256 or fewer; with more, shades that
 * nobody can tell apart fall together.
 *
 * @param pixels opaque red, green, blue, alpha; width x height x 4.
 * @returns undefined where there are more colours than a palette holds.
 *
 * Source: PNG specification, third edition, 11.2 (from memory).
 */
export function encodePalettePng(pixels: Uint8Array, width: number, height: number): Buffer | undefined {
  for (const mask of MASKS) {
    const drawn = inPalette(pixels, width, height, mask);
    if (drawn !== undefined) return writePng(drawn.rows, drawn.palette, width, height);
  }
  return undefined;
}

/** Rows of places in the palette, each after the byte that says "not filtered"; undefined where the palette is too small. */
function inPalette(
  pixels: Uint8Array,
  width: number,
  height: number,
  mask: number,
): { readonly rows: Uint8Array; readonly palette: readonly number[] } | undefined {
  const dots = new Uint32Array(pixels.buffer, pixels.byteOffset, width * height);
  const places = new Map<number, number>();
  const rows = new Uint8Array((width + 1) * height);
  let lastColour = -1;
  let lastPlace = 0;
  for (let row = 0, at = 0; row < height; row++) {
    let to = row * (width + 1) + 1;
    for (let column = 0; column < width; column++, at++, to++) {
      const colour = dots[at]! & mask;
      if (colour !== lastColour) {
        let place = places.get(colour);
        if (place === undefined) {
          if (places.size === MOST_COLOURS) return undefined;
          place = places.size;
          places.set(colour, place);
        }
        lastColour = colour;
        lastPlace = place;
      }
      rows[to] = lastPlace;
    }
  }
  return { rows, palette: [...places.keys()].map((colour) => fullRange(colour, mask)) };
}

/** Bits that were cut off are filled from those that are left, so that white stays white. */
const fullRange = (colour: number, mask: number): number =>
  mask === 0xffffff ? colour : colour | ((colour >>> (mask === 0xf8f8f8 ? 5 : 4)) & ~mask & 0xffffff);

function writePng(rows: Uint8Array, colours: readonly number[], width: number, height: number): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 3, 0, 0, 0], 8);
  const palette = Buffer.alloc(colours.length * 3);
  for (const [place, colour] of colours.entries())
    palette.set([colour & 0xff, (colour >>> 8) & 0xff, (colour >>> 16) & 0xff], place * 3);
  return Buffer.concat([
    SIGNATURE,
    chunk("IHDR", head),
    chunk("PLTE", palette),
    chunk("IDAT", deflateSync(rows, { level: LEVEL })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

function chunk(name: string, content: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(name, "latin1"), content]);
  const whole = Buffer.alloc(body.length + 8);
  whole.writeUInt32BE(content.length, 0);
  whole.set(body, 4);
  whole.writeUInt32BE(crc32(body), body.length + 4);
  return whole;
}
