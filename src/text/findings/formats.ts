import type { Sentences } from "./sentences.ts";

export const formatsSentences: Sentences = {};
