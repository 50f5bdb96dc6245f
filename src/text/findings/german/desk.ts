import type { Sentences } from "../sentences.ts";

export const deskSentences: Sentences = {
  "desk.nothing-kept":
    "Dieser Browser behält nichts für diese Seite ({found}). Erlauben Sie das Speichern, oder verlassen Sie das private Fenster, und laden Sie die Seite neu.",
  "desk.writer-elsewhere":
    "Ein anderes Fenster dieses Browsers schreibt. Es wurde nichts geändert: Machen Sie dort weiter, oder schließen Sie es und versuchen Sie es wieder.",
  "desk.nobody-signed-in":
    "Es ist noch nicht bekannt, wer schreibt. Es wurde nichts geändert: Melden Sie sich an und versuchen Sie es wieder.",
  "desk.cannot-settle":
    "Das Feld {field} von {thing} lässt sich nicht für sich schreiben. Es wurde nichts geändert: Ändern Sie es auf seiner eigenen Seite.",
  "desk.job-not-open":
    "Der Auftrag {job} ist in diesem Fenster nicht offen. Öffnen Sie ihn und versuchen Sie es wieder.",
  "desk.no-such-job":
    "Weder dieses Gerät noch das Büro hat einen Auftrag {job}, den Sie öffnen dürfen. Prüfen Sie die Adresse, oder lassen Sie sich zum Auftrag hinzufügen.",
  "desk.conflict-open":
    "Zwei Personen haben ein Feld von {element} oder einer seiner Messreihen geändert. Es wurde nichts unterschrieben: Entscheiden Sie das zuerst, unter Konflikte.",
  "desk.nothing-recorded":
    "Zu {element} ist noch kein Urteil festgehalten. Es wurde nichts unterschrieben: Halten Sie zuerst das Urteil fest.",
  "desk.not-worked-out":
    "{element} ist noch nicht ausgewertet. Es wurde nichts festgehalten: Warten Sie, bis es so weit ist, und versuchen Sie es wieder.",
  "desk.office-silent":
    "Das Büro hat nicht geantwortet. Auf diesem Gerät ist alles sicher: Prüfen Sie die Verbindung und versuchen Sie es wieder.",
  "desk.office-refused":
    "Das Büro gibt es nicht heraus (Antwort {status}). Fragen Sie, wer es betreibt, ob Sie es sehen dürfen, oder senden Sie zuerst, was auf diesem Gerät ist.",
  "desk.proof-does-not-fit":
    "Der Weg, den das Büro nennt, führt nicht von diesem Eintrag zu dem Stand, den es unterschrieben hat. Bewahren Sie eine Kopie des Auftragsordners auf und fragen Sie im Büro, was geschehen ist.",
};
