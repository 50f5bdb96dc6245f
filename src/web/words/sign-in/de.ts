import type { en } from "./en.ts";

export const de: Record<keyof typeof en, string> = {
  title: "Anmelden",
  lead: "Dieses Büro hat Konten. Was Sie aufzeichnen, steht unter Ihrem Namen.",
  login: "Name oder E-Mail-Adresse",
  password: "Passwort",
  send: "Anmelden",
  wrong:
    "Name und Passwort gehören nicht zusammen. Tippen Sie beides neu, oder fragen Sie, wer das Büro verwaltet.",
  slowDown: "Es gab viele Versuche. Warten Sie eine Minute und versuchen Sie es dann wieder.",
  noAnswer:
    "Das Büro hat nicht geantwortet. Was auf diesem Gerät ist, ist sicher. Prüfen Sie die Verbindung und versuchen Sie es wieder.",
  codeTitle: "Zweiter Schritt",
  code: "Code",
  codeHint: "Sechs Ziffern Ihres Authenticator-Programms oder einer Ihrer Wiederherstellungscodes.",
  codeWrong:
    "Dieser Code gilt nicht. Tippen Sie den, der jetzt angezeigt wird, oder einen noch nicht benutzten Wiederherstellungscode.",
  back: "Zurück",
};
