import { describe, expect, test } from "vitest";
import { convertLogger } from "./convert-logger.ts";
import { openLogger } from "./open-logger.ts";

/** Marsaglia's xorshift: a seed gives the same file again. */
function chance(seed: number): (below: number) => number {
  let state = seed * 2_654_435_761 + 1;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % below;
  };
}

const DIALECTS = [
  { separator: ",", decimal: "." },
  { separator: ";", decimal: "." },
  { separator: ";", decimal: "," },
  { separator: "\t", decimal: "," },
  { separator: "\t", decimal: "." },
  { separator: "|", decimal: "." },
  { separator: "   ", decimal: "." },
  { separator: "  ", decimal: "," },
] as const;

interface Made {
  readonly bytes: Uint8Array;
  readonly depths: readonly number[];
  readonly tilts: readonly number[];
}

/** A file as some logger could write it: numbers known, everything about its form drawn by lot. */
function makeFile(seed: number): Made {
  const draw = chance(seed);
  const { separator, decimal } = DIALECTS[draw(DIALECTS.length)]!;
  const count = 4 + draw(40);
  const depths = Array.from({ length: count }, (_, i) => i * 0.5);
  const tilts = depths.map(() => (draw(3001) - 1500) / 1000);
  const write = (value: number, digits: number) => value.toFixed(digits).replace(".", decimal);
  const minus = draw(3) === 0 ? "−" : "-";
  const rows = depths.map((depth, i) =>
    [write(depth, 2), write(tilts[i]!, 3), write(-tilts[i]!, 3), "1"].join(separator).replaceAll("-", minus),
  );
  const preamble = ["# export", "Serial: 0001", "Hole: P12"].slice(0, draw(4));
  const heads = [
    ["Depth [m]", "Tilt_X [deg]", "Tilt_Y [deg]", "Face"],
    ["Tiefe_m", "NeigungX_deg", "NeigungY_deg", "Seite"],
    ["depth_m", "tilt_x_deg", "tilt_y_deg", "face"],
  ][draw(3)]!;
  const footer = draw(2) === 0 ? ["", "End of data"] : [];
  const end = draw(2) === 0 ? "\n" : "\r\n";
  const text = [...preamble, heads.join(separator), ...rows, ...footer].join(end) + end;
  const inUtf16 = draw(4) === 0;
  const bytes = inUtf16
    ? new Uint8Array([0xff, 0xfe, ...new Uint8Array(Uint16Array.from(text, (c) => c.charCodeAt(0)).buffer)])
    : new TextEncoder().encode(text);
  return { bytes, depths, tilts };
}

describe("files drawn by lot", () => {
  test("every number comes out as it went in, whatever the form of the file", async () => {
    for (let seed = 1; seed <= 400; seed++) {
      const { bytes, depths, tilts } = makeFile(seed);
      const opened = await openLogger(bytes, "drawn.txt");
      if (!opened.ok) expect.fail(`seed ${seed}: ${JSON.stringify(opened.findings)}`);
      const { cells, measures } = convertLogger(opened.file);
      const column = (name: string) => cells.columns[cells.headings.indexOf(name)];
      expect(measures, `seed ${seed}`).toBe("keyed-tilt");
      expect(column("depth_m"), `seed ${seed}`).toEqual(depths);
      expect(column("tilt_x_deg"), `seed ${seed}`).toEqual(tilts);
      expect(column("tilt_y_deg"), `seed ${seed}`).toEqual(tilts.map((tilt) => (tilt === 0 ? 0 : -tilt)));
    }
  });

  test("damage never throws, and no line is lost in silence", async () => {
    for (let seed = 1; seed <= 600; seed++) {
      const { bytes } = makeFile(seed);
      const draw = chance(seed + 10_000);
      const damaged = Uint8Array.from(bytes);
      for (let i = 0; i < 1 + draw(12); i++) damaged[draw(damaged.length)] = draw(256);
      const cut = damaged.subarray(0, draw(3) === 0 ? draw(damaged.length) : damaged.length);
      const opened = await openLogger(cut, "damaged.txt");
      if (!opened.ok) {
        expect(opened.findings.length, `seed ${seed}`).toBeGreaterThan(0);
        continue;
      }
      const { rows, lines, findings } = convertLogger(opened.file);
      const told = new Set(findings.map(({ place }) => place.line));
      const silent = rows.filter(
        ({ isTaken, flags, line }) => !isTaken && flags.length === 0 && !told.has(line),
      );
      expect(silent, `seed ${seed}`).toEqual([]);
      expect(lines.length + rows.filter(({ isTaken }) => !isTaken).length, `seed ${seed}`).toBe(rows.length);
    }
  });

  test("bytes of no sense at all are refused or told", async () => {
    for (let seed = 1; seed <= 200; seed++) {
      const draw = chance(seed + 20_000);
      const bytes = Uint8Array.from({ length: draw(2000) }, () => draw(256));
      const opened = await openLogger(bytes, "noise.bin");
      if (!opened.ok) expect(opened.findings.length, `seed ${seed}`).toBeGreaterThan(0);
      else expect(convertLogger(opened.file).cells.columns.every((column) => column.length > 0)).toBe(true);
    }
  });
});
