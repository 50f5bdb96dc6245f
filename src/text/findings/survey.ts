import type { Sentences } from "./sentences.ts";

export const surveySentences: Sentences = {};
