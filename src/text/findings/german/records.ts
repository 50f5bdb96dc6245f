import type { Sentences } from "../sentences.ts";

export const recordsSentences: Sentences = {
  "records.not-json": "{field} enthält etwas, das nicht aufgeschrieben werden kann ({found}).",
  "records.number-not-finite":
    "{field} ist keine Zahl, die aufgeschrieben werden kann ({found}). Weglassen, wo nichts gemessen wurde.",
  "records.text-surrogate": "{field} enthält ein halbes Zeichen: {found}. Den Text neu eingeben.",
  "records.text-null":
    "{field} enthält das Zeichen U+0000, das manche Speicher nicht halten können: {found}. Es entfernen.",
  "records.too-deep": "{field} ist {found} Ebenen tief geschachtelt, tiefer, als ein Eintrag sein darf.",
  "records.not-json-text":
    "Das ist kein JSON, oder es wurde unterwegs abgeschnitten ({found}). Noch einmal senden oder lesen.",
  "records.key": "Das ist kein privater Schlüssel. Erwartet: {expected}.",
  "records.no-signatures":
    "Dieser Browser oder dieses Gerät kann keine Ed25519-Signaturen ({found}). Mit einem anderen aufzeichnen; dieses taugt zum Ansehen.",
  "records.entry-shape": "Das ist kein Eintrag des Protokolls: {field}: {found}.",
  "records.entry-chain-start":
    "Eintrag {sequence} von Gerät {device} passt nicht zum Anfang einer Kette: Nur der erste folgt auf nichts, und in ihm sagt das Gerät, was es ist.",
  "records.entry-too-large":
    "Der Eintrag hat {found} Byte; höchstens {expected} sind erlaubt. Ihn auf mehrere verteilen.",
  "records.id-mismatch":
    "Eintrag {sequence} von Gerät {device} wurde nach dem Schreiben geändert: Sein Inhalt passt nicht zu seinem Namen {entry}.",
  "records.signature-wrong":
    "Eintrag {sequence} von Gerät {device} ist nicht von diesem Gerät unterschrieben oder wurde danach geändert.",
  "records.other-job": "Der Eintrag gehört zu einem anderen Auftrag ({found}).",
  "records.entry-twice": "Der Eintrag {entry} steht zweimal im Protokoll.",
  "records.kind-unknown":
    'Einträge der Art "{found}" kennt diese Version nicht. Sie werden aufbewahrt; das Programm erneuern, um sie zu sehen.',
  "records.kind-newer":
    'Ein Eintrag der Art "{kind}" stammt von einer neueren Version. Er wird aufbewahrt; das Programm erneuern, um ihn zu sehen.',
  "records.body-shape": 'Ein Eintrag der Art "{kind}" ist nicht, wie er sein soll: {field}: {found}.',
  "records.chain-gap":
    "Die Einträge {from} bis {to} von Gerät {device} sind nicht hier. Was danach kommt, zählt erst, wenn sie eintreffen.",
  "records.chain-fork":
    "Gerät {device} hat zwei verschiedene Einträge mit der Nummer {sequence}: Sein Speicher wurde kopiert, oder jemand schrieb in seinem Namen.",
  "records.chain-link":
    "Eintrag {sequence} von Gerät {device} folgt nicht auf den Eintrag davor: Einer der beiden wurde ausgetauscht.",
  "records.chain-contradicted":
    "Ein anderes Gerät hat einen anderen Eintrag {sequence} von Gerät {device} gesehen als den, der hier ist.",
  "records.clock-jump":
    "Die Uhr von Gerät {device} wurde vor Eintrag {sequence} um {found} s verstellt. Die Reihenfolge der Einträge ist nicht betroffen.",
  "records.clock-backwards":
    "Die Uhr von Gerät {device} ging zwischen zwei Starts des Programms vor Eintrag {sequence} um {found} s zurück. Die Reihenfolge der Einträge ist nicht betroffen.",
  "records.clock-monotonic":
    "Die Laufzeit von Gerät {device} läuft bei Eintrag {sequence} rückwärts ({found} s). Die Reihenfolge der Einträge ist nicht betroffen.",
  "records.clock-offset":
    "Die Uhr von Gerät {device} ging bei Eintrag {sequence} um {found} s anders als die Uhr im Büro. Die Uhr des Geräts stellen.",
  "records.head-shape": "Das ist kein Kopf eines Protokolls: {field}: {found}.",
  "records.head-signature":
    "Der Kopf über {size} Einträge ist nicht mit dem genannten Schlüssel unterschrieben oder wurde geändert.",
  "records.head-cut":
    "Das Protokoll hat hier {found} Einträge; als der Kopf entstand, waren es {expected}. Das Ende fehlt.",
  "records.head-mismatch":
    "Die ersten {size} Einträge sind nicht die, die da waren, als der Kopf entstand: Ein Eintrag wurde geändert, eingefügt, entfernt oder verschoben.",
  "records.seal-nothing": "Zu {about} gibt es nichts, wofür unterschrieben werden könnte.",
  "records.seal-shape": "Das ist keine Unterschrift einer Person: {found}.",
  "records.seal-signature":
    "Die Unterschrift von {name} für {about} gilt nicht: Sie wurde nach dem Unterschreiben geändert.",
  "records.seal-key":
    "Die Unterschrift für {about} wurde mit einem Schlüssel geleistet, den {name} in diesem Auftrag nicht bekannt gegeben hat.",
  "records.seal-entries-missing":
    "{name} unterschrieb für {expected} Einträge zu {about}; hier sind nur {found}. Die anderen holen und neu prüfen.",
  "records.seal-broken": "Die Einträge zu {about} sind nicht die, für die {name} unterschrieb.",
  "records.message-shape": "Die Nachricht ist nicht, wie sie sein soll: {field}: {found}.",
};
