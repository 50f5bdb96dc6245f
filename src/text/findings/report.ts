import type { Sentences } from "./sentences.ts";

export const reportSentences: Sentences = {
  "report.pdf-not-made": "The PDF could not be made: {reason}.",
  "report.template-too-large": "The template unpacks to {found} bytes; at most {expected} are taken.",
  "report.template-part-missing": "The template has no {found}, so it is no Word document.",
  "report.template-active": "The template holds {found}. Templates may hold text, layout and tags only.",
  "report.template-outside":
    "The template points outside of itself ({found}). Remove the link and try again.",
  "report.template-field":
    "The template has the field {found}, which reads other files or starts programs. Remove the field and try again.",
  "report.template-xml": "The part {found} of the template cannot be read as XML, or declares entities.",
  "report.template-tag-unknown":
    'The tag "{found}" is not known{hint}. It would stay empty in the report; docs/users/reports.md lists every tag.',
  "report.template-tag-open": "The tags of the template do not fit together ({reason}).",
  "report.word-not-made": "The Word document could not be made: {reason}.",
};
