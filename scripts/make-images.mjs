import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { Resvg } from "@resvg/resvg-js";
import { root } from "./run-step.mjs";

// Pictures of README.md from the drawings of the example job: run `npm start` first, then this.
const PICTURES = process.argv.slice(2);
if (PICTURES.length === 0) {
  console.error("Name the drawings, e.g. node scripts/make-images.mjs B2-plan B2-section");
  process.exit(2);
}

const fonts = join(dirname(createRequire(import.meta.url).resolve("dejavu-fonts-ttf/package.json")), "ttf");
mkdirSync(join(root, "docs/images"), { recursive: true });
for (const name of PICTURES) {
  const svg = readFileSync(join(root, "out/shaft-and-pier/figures", `${name}.svg`), "utf8");
  const png = new Resvg(svg, {
    fitTo: { mode: "width", value: 1000 },
    background: "#fff",
    font: {
      loadSystemFonts: false,
      fontFiles: [join(fonts, "DejaVuSans.ttf"), join(fonts, "DejaVuSans-Bold.ttf")],
      defaultFontFamily: "DejaVu Sans",
      sansSerifFamily: "DejaVu Sans",
    },
  });
  writeFileSync(join(root, "docs/images", `${name}.png`), png.render().asPng());
}
