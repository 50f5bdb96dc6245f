import type { Sentences } from "../sentences.ts";

export const storeSentences: Sentences = {
  "store.full":
    "Zum Schreiben ist kein Platz mehr ({found}). Nichts davon wurde behalten: Platz schaffen und noch einmal versuchen.",
  "store.busy":
    "Ein anderes Programm schreibt in denselben Speicher ({found}). Nichts davon wurde behalten: noch einmal versuchen.",
  "store.damaged":
    "Der Speicher ist beschädigt und nicht lesbar ({found}). Nicht hineinschreiben; eine Kopie aufheben und die letzte Sicherung einspielen.",
  "store.unreachable":
    "Der Speicher ist nicht erreichbar ({found}). Nichts davon wurde behalten: prüfen, ob er da ist und benutzt werden darf, dann noch einmal versuchen.",
  "store.closed": "Der Speicher wurde geschlossen. Ihn wieder öffnen.",
  "store.failed":
    "Der Speicher konnte nicht ausführen, was verlangt war ({found}). Nichts davon wurde behalten: noch einmal versuchen.",
  "store.newer":
    "Mit diesem Speicher hat eine neuere Version des Programms gearbeitet (Stand {found}; diese Version kennt {expected}). Das Programm erneuern.",
  "store.entry-damaged":
    "Ein Eintrag im Speicher ist nicht mehr lesbar: {found}. Eine Kopie des Speichers aufheben und die letzte Sicherung einspielen.",
  "store.id-taken":
    "Der Eintrag {entry} ist schon hier, mit anderem Inhalt. Der hiesige bleibt; der andere wurde beiseitegelegt.",
  "store.blob-name":
    "Eine Datei heißt nach ihrer SHA-256-Prüfsumme, 64 kleine Hexadezimalziffern; gefunden: {found}.",
  "store.blob-part":
    "Ein Teil von {found} Byte ab Byte {from} passt nicht: Teile haben 1 bis {expected} Byte und liegen in den {size} Byte der Datei.",
  "store.blob-size": "Die Datei {hash} soll {found} Byte haben, was nicht sein kann. Sie neu senden.",
  "store.blob-size-changed":
    "Die Datei {hash} soll {found} Byte haben; als ihr erster Teil kam, waren es {expected}.",
  "store.blob-offset":
    "Der nächste Teil der Datei {hash} muss bei Byte {expected} beginnen, nicht bei {found}. Dort weitermachen.",
  "store.blob-differs":
    "Der Teil der Datei {hash} ab Byte {from} ist schon hier, mit anderen Bytes. Was hier ist, bleibt.",
  "store.blob-hash":
    "Die Datei kam vollständig an, ist aber nicht {hash}: Ihre SHA-256-Prüfsumme ist {found}. Sie wurde unterwegs verändert; noch einmal senden.",
};
