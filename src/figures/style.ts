import type { Attributes } from "./svg/markup.ts";

/** Ink of outlines, text and everything that must survive a one-bit print. */
export const INK = "#111111";
/** Colour of the as-built axis; its weight, not its colour, tells it from the rest. */
export const AS_BUILT = "#0072B2";

/** Sizes of text in drawing units; four units are a millimetre, so the smallest prints at 7.4 points. */
export const SIZE = { title: 18, body: 11.5, label: 10.5 } as const;

/** Lines. Weights follow the groups of technical drawing: wide, narrow and hairline, each half the one before. */
export const LINE = {
  asBuilt: { stroke: AS_BUILT, "stroke-width": 2.4, fill: "none", "stroke-linejoin": "round" },
  gap: {
    stroke: INK,
    "stroke-width": 1.2,
    fill: "none",
    "stroke-dasharray": "2 4",
    "stroke-linecap": "round",
  },
  design: { stroke: INK, "stroke-width": 0.9, fill: "none", "stroke-dasharray": "14 3 2 3" },
  frame: { stroke: INK, "stroke-width": 1, fill: "none" },
  level: { stroke: INK, "stroke-width": 0.8, fill: "none" },
  grid: { stroke: INK, "stroke-width": 0.7, fill: "none", "stroke-dasharray": "1 4" },
  outline: { stroke: INK, "stroke-width": 0.9, fill: "none" },
  leader: { stroke: INK, "stroke-width": 0.6, fill: "none" },
} as const satisfies Record<string, Attributes>;

/** Uncertainty: an outline that one ink can print, and a tint that may be lost. */
export const ELLIPSE = {
  stroke: AS_BUILT,
  "stroke-width": 1,
  fill: AS_BUILT,
  "fill-opacity": "0.12",
} as const satisfies Attributes;
export const BAND = { stroke: "none", fill: AS_BUILT, "fill-opacity": "0.16" } as const satisfies Attributes;
export const BAND_EDGE = {
  stroke: AS_BUILT,
  "stroke-width": 0.6,
  fill: "none",
} as const satisfies Attributes;
export const ERROR_BAR = { stroke: INK, "stroke-width": 1.1, fill: "none" } as const satisfies Attributes;

/** Allowances are told apart by their dashes: the first one is the plainest. */
export const ALLOWANCE_DASHES = ["9 4", "9 3 2 3 2 3", "3 3", "16 4", "6 2 6 6"] as const;

export const allowanceLine = (index: number): Attributes => ({
  stroke: INK,
  "stroke-width": 1.5,
  fill: "none",
  "stroke-dasharray": ALLOWANCE_DASHES[index % ALLOWANCE_DASHES.length],
});

/** White edge around text that crosses lines. */
export const HALO = {
  stroke: "#FFFFFF",
  "stroke-width": 3,
  "stroke-linejoin": "round",
  "paint-order": "stroke",
} as const satisfies Attributes;
