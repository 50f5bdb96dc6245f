import { readFileSync } from "node:fs";

/** A file that stands beside the program, in `assets/`: in a checkout and beside the bundle alike. */
export const readAsset = (name: string): Buffer => readFileSync(new URL(`./assets/${name}`, import.meta.url));
