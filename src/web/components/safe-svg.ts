import { fail, ok, type Result } from "#core";

/** What our drawings are made of. Anything else has no business in one. */
const ELEMENTS = new Set(
  "svg g title desc rect circle ellipse line polyline polygon path text tspan defs clipPath pattern marker".split(
    " ",
  ),
);

/**
 * A drawing as a node, after a look at what it is made of: lines and text, nothing that loads, runs or styles.
 *
 * @returns the name of what does not belong there, if something does not.
 */
export function safeSvg(text: string): Result<SVGSVGElement, string> {
  const parsed = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  for (const node of [parsed, ...parsed.querySelectorAll("*")]) {
    if (!ELEMENTS.has(node.localName)) return fail(node.localName);
    for (const { name, value } of node.attributes)
      if (/^on|href$|^style$/i.test(name) || (/url\(/i.test(value) && !/^url\(#[\w-]+\)$/.test(value)))
        return fail(name);
  }
  return parsed instanceof SVGSVGElement ? ok(parsed) : fail(parsed.localName);
}
