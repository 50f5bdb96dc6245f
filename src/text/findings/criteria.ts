import type { Sentences } from "./sentences.ts";

export const criteriaSentences: Sentences = {};
