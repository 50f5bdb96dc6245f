import type { Sentences } from "./sentences.ts";

export const geodesySentences: Sentences = {};
