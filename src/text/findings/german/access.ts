import type { Sentences } from "../sentences.ts";

export const accessSentences: Sentences = {
  "access.busy": "Der Server ist mit anderen Anmeldungen beschäftigt. Gleich noch einmal versuchen.",
  "access.slow-down": "Das wurde zu oft versucht. In {seconds} s noch einmal versuchen.",
  "access.wrong-login": "Anmeldename und Passwort passen nicht zusammen.",
  "access.wrong-password": "Das ist nicht das Passwort dieses Kontos.",
  "access.wrong-code": "Dieser Code gilt nicht: vertippt, schon benutzt oder zu alt.",
  "access.passkey-refused":
    "Der Passkey wurde nicht angenommen. Noch einmal versuchen oder auf anderem Weg anmelden.",
  "access.no-public-address":
    "Passkeys müssen die Adresse dieses Servers kennen: Wer ihn betreibt, muss seine öffentliche Adresse einstellen.",
  "access.sign-in-needed":
    "Zuerst anmelden. Was auf diesem Gerät aufgezeichnet wurde, bleibt bis dahin hier.",
  "access.second-factor-pending": "Das Passwort stimmt; jetzt noch den zweiten Faktor zeigen.",
  "access.second-factor-needed":
    "Das verlangt einen zweiten Faktor ({right}): dem Konto einen Passkey oder ein Programm für Einmalcodes hinzufügen und damit anmelden.",
  "access.not-allowed":
    "Die Rolle in diesem Projekt erlaubt das nicht ({right}). Wer das Projekt leitet, kann die Rolle ändern.",
  "access.session-only": "Das kann nur eine angemeldete Person, kein Programm mit einem Token.",
  "access.no-accounts": "Dieser Server läuft für eine Person auf einem Rechner und hat keine Konten.",
  "access.password-short":
    "Ein Passwort hat mindestens {expected} Zeichen; dieses hat {found}. Fünfzehn oder mehr sind besser: ein paar Wörter, die nicht zusammengehören.",
  "access.password-long": "Ein Passwort hat höchstens {expected} Zeichen; dieses hat {found}.",
  "access.password-common":
    "Dieses Passwort wird mit als Erstes geraten: ein häufiges Wort, eine Folge von Tasten oder Zahlen oder aus einem Namen des Kontos gebildet. Ein paar Wörter wählen, die nicht zusammengehören.",
  "access.login-taken": "Dieser Anmeldename kann hier nicht benutzt werden. Einen anderen wählen.",
  "access.link-dead":
    "Dieser Link gilt nicht: schon benutzt, zurückgezogen oder zu alt. Einen neuen erbitten.",
  "access.last-administrator":
    "Jemand muss diesen Server verwalten: zuerst ein anderes Konto dazu berechtigen.",
  "access.scope-too-wide": "Ein Token kann nicht mehr als die Person, der es gehört ({right}).",
};
