import type { en } from "./en.ts";

export const de: Record<keyof typeof en, string> = {
  title: "Aufträge",
  lead: "Alle Aufträge auf diesem Gerät und im Büro, der zuletzt bearbeitete zuerst.",
  newJob: "Neuer Auftrag",
  newTitle: "Neuer Auftrag",
  newName: "Name des Auftrags",
  newHint: "So, wie die Baustelle ihn nennt. Er lässt sich später ändern.",
  newMissing: "Geben Sie dem Auftrag einen Namen.",
  newGrid: "Koordinaten liegen auf",
  gridOwn: "Baustellennetz",
  gridMap: "Kartengitter",
  newEpsg: "EPSG-Nummer des Kartengitters",
  newEpsgHint:
    "So, wie Pläne und Vermesser es nennen, etwa 32631. Damit werden wahre und magnetische Richtungen auf Gitternord gedreht.",
  gridFound: "= {name}",
  epsgMissing: "Geben Sie die EPSG-Nummer des Kartengitters ein, oder wählen Sie das Baustellennetz.",
  newLatitude: "Breite",
  newLongitude: "Länge",
  newPlaceHint:
    "Wo die Baustelle liegt, auf ein Zehntel Grad oder besser. Es wird für die Erddrehung und die Missweisung gebraucht und um vertauschte Koordinaten zu bemerken. Nord und Ost sind positiv.",
  placeBoth: "Geben Sie Breite und Länge ein, oder lassen Sie beide leer.",
  placeOutside:
    "Das liegt außerhalb des Gebiets, in dem {name} gebraucht wird: Breite {south} bis {north}, Länge {west} bis {east}.",
  newDatum: "Höhen beziehen sich auf",
  newDatumHint: "Der Höhenbezug, wie ihn die Pläne nennen.",
  create: "Auftrag beginnen",
  createFailed: "Der Auftrag konnte nicht begonnen werden. {why}",
  emptyTitle: "Noch keine Aufträge",
  emptyText:
    "Beginnen Sie einen, bringen Sie einen Auftragsordner herein, oder lassen Sie sich vom Büro zu einem Auftrag hinzufügen.",
  list: "Aufträge",
  name: "Auftrag",
  elements: "Elemente",
  runs: "Messreihen",
  entries: "Einträge",
  last: "Zuletzt geschrieben",
  place: "Wo er liegt",
  here: "Auf diesem Gerät",
  office: "Im Büro: Öffnen holt ihn her",
  drop: "Legen Sie hier einen Auftragsordner ab: den Ordner selbst oder ein Zip davon.",
  choose: "Zip oder Dateien wählen",
  importing: "Der Auftrag wird hereingebracht",
  imported:
    "{name}: {count, plural, =0 {alles war schon da} one {# Eintrag geschrieben} other {# Einträge geschrieben}}.",
  importFailedTitle: "Der Ordner konnte nicht hereingebracht werden",
  importFailedText: "Es wurde nichts geändert. Was in Ordnung zu bringen ist:",
  importFindings: "Hereingebracht, mit Befunden",
  openJob: "Auftrag öffnen",
  readFailed: "Die Aufträge dieses Geräts konnten nicht gelesen werden",
  readFailedText:
    "{why} Es wurde nichts geändert. Laden Sie die Seite neu; bleibt es dabei, sichern Sie eine Kopie dessen, was im Büro liegt.",
};
