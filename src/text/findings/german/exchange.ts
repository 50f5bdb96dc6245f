import type { Sentences } from "../sentences.ts";

/** Zwischen Auftragsordner und Protokoll eines Auftrags. */
export const exchangeSentences: Sentences = {
  "exchange.conflict":
    "{field} von {thing} hat mehrere Werte von Leuten, die nichts voneinander wussten: {found}. Verwendet wird {used}; im Auftrag klären.",
  "exchange.file-not-here":
    "Die Datei {found} gehört zum Auftrag, ist aber noch nicht hier ({blob}). Im Ordner fehlt sie.",
  "exchange.file-not-taken": "{found} gehört nicht zu einem Auftragsordner und wurde nicht übernommen.",
  "exchange.file-renamed":
    "Die Messwerte {found} wurden als {used} geschrieben: der Name war vergeben oder nicht überall erlaubt.",
  "exchange.incomplete":
    "Das Protokoll ist hier nicht vollständig: {found} Einträge fehlen, warten oder werden nicht verstanden. Was daraus entstand, kann sich ändern.",
  "exchange.rows-missing": "Messreihe {run} sollte {expected} Messwerte haben; {found} sind hier.",
  "exchange.run-not-opened":
    "Messwerte der Messreihe {found} sind hier, aber nicht ihr Beginn. Sie ist ausgelassen.",
  "exchange.too-large":
    "{found} ({kind}) ist in einem Stück zu groß: ein Eintrag fasst höchstens {expected} Byte. Bitte teilen.",
  "exchange.withdrawn":
    "{found} wurde im Auftrag zurückgezogen und bleibt es, obwohl der Ordner es noch nennt.",
};
