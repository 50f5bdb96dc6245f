import type { Sentences } from "../sentences.ts";

export const workSentences: Sentences = {
  "work.unknown-task": "Eine solche Aufgabe gibt es nicht: {found}.",
  "work.input": "Die Aufgabe {task} kann damit nicht arbeiten: {field}: {found}.",
  "work.queue-full":
    "Es wartet schon zu viel; von einer Person dürfen {expected} Aufträge warten. Warten, bis einige fertig sind, oder einige abbrechen.",
  "work.crashed":
    "Die Arbeit endete, bevor sie fertig war ({found}). Sie noch einmal anfordern, oder weniger auf einmal.",
  "work.lost":
    "Wer die Arbeit ausführte, ging {found}-mal verloren; sie wurde aufgegeben. Sie noch einmal anfordern, oder weniger auf einmal.",
  "work.unknown": "Einen solchen Auftrag gibt es in diesem Projekt nicht.",
  "work.not-yours": "Diesen Auftrag hat jemand anderes gegeben. Wer das Projekt leitet, kann ihn abbrechen.",
  "work.no-file": "Es gibt keine Datei zum Abholen: {found}.",
  "work.job": "Aus dem jetzigen Stand lässt sich nichts berechnen ({found}).",
};
