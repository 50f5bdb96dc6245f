import type { Sentences } from "../sentences.ts";

export const reportSentences: Sentences = {
  "report.pdf-not-made": "Das PDF konnte nicht erzeugt werden: {reason}.",
  "report.template-too-large":
    "Die Vorlage wird ausgepackt {found} Bytes groß; höchstens {expected} werden angenommen.",
  "report.template-part-missing": "Der Vorlage fehlt {found}; sie ist kein Word-Dokument.",
  "report.template-active":
    "Die Vorlage enthält {found}. Vorlagen dürfen nur Text, Gestaltung und Marken enthalten.",
  "report.template-outside":
    "Die Vorlage verweist nach außen ({found}). Den Verweis entfernen und erneut versuchen.",
  "report.template-field":
    "Die Vorlage enthält das Feld {found}, das andere Dateien liest oder Programme startet. Das Feld entfernen und erneut versuchen.",
  "report.template-xml": "Der Teil {found} der Vorlage ist nicht als XML lesbar oder erklärt Entitäten.",
  "report.template-tag-unknown":
    "Die Marke „{found}“ ist nicht bekannt{hint}. Sie bliebe im Bericht leer; docs/users/reports.md nennt alle Marken.",
  "report.template-tag-open": "Die Marken der Vorlage passen nicht zusammen ({reason}).",
  "report.word-not-made": "Das Word-Dokument konnte nicht erzeugt werden: {reason}.",
};
