import { catalogue } from "../catalogue.ts";
import { de } from "./de.ts";
import { en } from "./en.ts";

export const fieldsWords = catalogue(en, de);
