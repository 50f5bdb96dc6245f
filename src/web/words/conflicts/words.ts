import { catalogue } from "../catalogue.ts";
import { de } from "./de.ts";
import { en } from "./en.ts";

export const conflictsWords = catalogue(en, de);
