import type { ReportStatus, SignatureMeaning } from "../model/report-model.ts";
import type { Words } from "./say.ts";

/** What stands on the cover, at the head and foot of each page, and around the sections. */
export const frame = {
  title: { en: "As-built position and verticality", de: "Lage und Neigung nach der Herstellung" },
  report: { en: "Report", de: "Bericht" },
  number: { en: "Report {number}", de: "Bericht {number}" },
  revision: { en: "Revision {revision}", de: "Revision {revision}" },
  reportNumber: { en: "Report number", de: "Berichtsnummer" },
  revisionName: { en: "Revision", de: "Revision" },
  status: { en: "State", de: "Stand" },
  date: { en: "Date", de: "Datum" },
  job: { en: "Job", de: "Auftrag" },
  client: { en: "Client", de: "Auftraggeber" },
  site: { en: "Site", de: "Baustelle" },
  contract: { en: "Contract", de: "Vertrag" },
  structure: { en: "Structure", de: "Bauwerk" },
  mainContractor: { en: "Main contractor", de: "Bauunternehmen" },
  contractor: { en: "Specialist contractor", de: "Spezialtiefbau" },
  designer: { en: "Designer", de: "Tragwerksplanung" },
  orderedBy: { en: "Ordered by", de: "Beauftragt durch" },
  author: { en: "Written by", de: "Verfasst von" },
  supersedes: { en: "Takes the place of", de: "Ersetzt" },
  contents: { en: "Contents", de: "Inhalt" },
  page: { en: "Page", de: "Seite" },
  of: { en: "of", de: "von" },
  table: { en: "Table", de: "Tabelle" },
  figure: { en: "Figure", de: "Bild" },
  continued: { en: "continued", de: "Fortsetzung" },
  fingerprint: { en: "Fingerprint", de: "Prüfsumme" },
  fingerprintLong: {
    en: "Fingerprint of the data behind this report",
    de: "Prüfsumme der Daten hinter diesem Bericht",
  },
  logHead: {
    en: "Evidence log: {size} entries, root {root}",
    de: "Nachweisprotokoll: {size} Einträge, Wurzel {root}",
  },
  noLog: {
    en: "Not sealed in an evidence log; the fingerprint is that of the results file.",
    de: "Nicht in einem Nachweisprotokoll versiegelt; die Prüfsumme ist die der Ergebnisdatei.",
  },
  codeAlt: {
    en: "Code with the number, revision and fingerprint of this report",
    de: "Code mit Nummer, Revision und Prüfsumme dieses Berichts",
  },
  elements: { en: "elements judged", de: "Bauteile beurteilt" },
  key: { en: "How verdicts are marked", de: "So sind die Urteile gekennzeichnet" },
  signHere: { en: "Name, date, signature", de: "Name, Datum, Unterschrift" },
  meaning: { en: "Meaning", de: "Bedeutung" },
  name: { en: "Name", de: "Name" },
  function: { en: "Function", de: "Funktion" },
  signedAt: { en: "Date", de: "Datum" },
  signature: { en: "Signature", de: "Unterschrift" },
  draftNote: {
    en: "Draft: not for use on site.",
    de: "Entwurf: nicht zur Verwendung auf der Baustelle.",
  },
  withdrawnNote: {
    en: "Withdrawn: this report must not be used any more.",
    de: "Zurückgezogen: dieser Bericht darf nicht mehr verwendet werden.",
  },
  madeBy: {
    en: "Worked out and written by Toeline {version}",
    de: "Berechnet und geschrieben mit Toeline {version}",
  },
} as const satisfies Record<string, Words>;

export const statusWords: Readonly<Record<ReportStatus, Words>> = {
  draft: { en: "Draft", de: "Entwurf" },
  "for-review": { en: "For review", de: "Zur Prüfung" },
  issued: { en: "Issued", de: "Ausgegeben" },
  withdrawn: { en: "Withdrawn", de: "Zurückgezogen" },
};

export const meaningWords: Readonly<Record<SignatureMeaning, Words>> = {
  tested: { en: "Tested by", de: "Gemessen von" },
  checked: { en: "Checked by", de: "Geprüft von" },
  approved: { en: "Approved by", de: "Freigegeben von" },
  accepted: {
    en: "Accepted by (client's representative)",
    de: "Angenommen von (Vertretung des Auftraggebers)",
  },
};
