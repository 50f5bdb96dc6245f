import { contract } from "#core";

export type Attributes = Readonly<Record<string, string | number | undefined>>;

const ESCAPED: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&apos;",
};

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones to be found
const UNSAFE = /[&<>"'\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|\p{Surrogate}/gu;

/** Text made safe for markup: the five special signs escaped, signs that XML 1.0 does not allow replaced. */
export function escapeXml(text: string): string {
  return text.replace(UNSAFE, (sign) => ESCAPED[sign] ?? "\uFFFD");
}

/** A coordinate with two decimals at most, the same on every machine. A drawing never gets a number that is not one. */
export function fixed(value: number): string {
  contract(Number.isFinite(value), `figures: ${value} is not a place on a drawing`);
  // adding 0 turns minus zero into zero
  return String(Math.round(value * 100) / 100 + 0);
}

/** One element of markup. Numbers are written with two decimals, text is escaped; undefined attributes are left out. */
export function tag(name: string, attributes: Attributes, ...children: readonly string[]): string {
  let written = `<${name}`;
  for (const key in attributes) {
    const value = attributes[key];
    if (value === undefined) continue;
    written += ` ${key}="${typeof value === "number" ? fixed(value) : escapeXml(value)}"`;
  }
  return children.length === 0 ? `${written}/>` : `${written}>${children.join("")}</${name}>`;
}

export const line = (x1: number, y1: number, x2: number, y2: number, style: Attributes): string =>
  tag("line", { x1, y1, x2, y2, ...style });

export const circle = (cx: number, cy: number, r: number, style: Attributes): string =>
  tag("circle", { cx, cy, r, ...style });

export const polygon = (points: readonly (readonly [number, number])[], style: Attributes): string =>
  tag("polygon", { points: points.map(([x, y]) => `${fixed(x)},${fixed(y)}`).join(" "), ...style });

/** A line of text with its left end, middle or right end at x and its baseline at y. */
export const text = (x: number, y: number, content: string, style: Attributes = {}): string =>
  tag("text", { x, y, ...style }, escapeXml(content));
