import type { Sentences } from "../sentences.ts";

export const geodesySentences: Sentences = {
  "geodesy.crs-local":
    "Das Baustellennetz ist örtlich; seine Richtung gegen geografisch Nord ist nicht bekannt. convergence_deg angeben, oder die Richtung ab Gitternord.",
  "geodesy.crs-not-epsg":
    'Das Koordinatensystem "{crs}" ist nicht verständlich. Erwartet wird "EPSG:" mit einer Nummer, zum Beispiel EPSG:32631, oder "local".',
  "geodesy.crs-geographic":
    "{crs} zählt in Breite und Länge; erwartet wird ein Kartennetz in Metern. Das Netz der Koordinaten nennen.",
  "geodesy.crs-refused":
    "{crs} kann hier nicht für Nord verwendet werden ({reason}). convergence_deg von der Vermessungsbehörde angeben.",
  "geodesy.crs-unknown":
    "{crs} steht nicht in der Liste der Kartennetze, die zum Programm gehört. Die Nummer prüfen oder convergence_deg angeben.",
  "geodesy.needs-grid-file":
    "Um Satellitenpositionen nach {crs} umzurechnen, braucht es die Gitterdatei {file}, die dieses Programm nicht enthält. Netzkoordinaten aus der Baustellenvermessung angeben.",
  "geodesy.datum-accuracy":
    "Satellitenpositionen lassen sich nur auf {found} m genau nach {crs} umrechnen; verlangt waren {expected} m. Netzkoordinaten aus der Baustellenvermessung angeben.",
  "geodesy.place-out-of-reach":
    "Der Ort der Baustelle ist mit {crs} ({name}) nicht erreichbar. Koordinaten, Koordinatensystem sowie Breite und Länge prüfen.",
  "geodesy.no-single-convergence":
    "An diesem Ort dreht {crs} ({name}) Richtungen je nach Richtung verschieden; eine einzige Meridiankonvergenz gilt nicht. Das Vermessungsnetz der Baustelle nennen.",
  "geodesy.outside-area":
    "Die Baustelle auf Breite {latitude}, Länge {longitude} liegt außerhalb des Gebiets, für das {crs} ({name}) gedacht ist. Koordinaten und Koordinatensystem prüfen.",
  "geodesy.scale-far-from-one":
    "Ein Meter am Boden ist an diesem Ort {scale} m in {crs}. Erwartet wird ein Vermessungsnetz nahe 1. Das Koordinatensystem prüfen.",
  "geodesy.bad-date":
    'Das Datum "{date}" ist nicht verständlich. Erwartet wird Jahr-Monat-Tag, zum Beispiel 2026-03-02.',
  "geodesy.bad-place":
    "Breite, Länge oder Höhe der Baustelle fehlt oder ist unmöglich. Erwartet werden Breiten zwischen -90 und 90 und Längen zwischen -180 und 180 Grad.",
  "geodesy.date-outside-model":
    "Das Datum {date} liegt außerhalb des Magnetfeldmodells {model}, das von Anfang {from} bis Anfang {to} gilt. declination_deg angeben.",
  "geodesy.no-compass-here":
    "Das waagrechte Magnetfeld hat hier nur {horizontal} nT, zu schwach für einen Kompass. Eine gepeilte Richtung oder einen Kreisel verwenden.",
  "geodesy.weak-horizontal-field":
    "Das waagrechte Magnetfeld hat hier nur {horizontal} nT; Kompassrichtungen sind schlecht. Eine gepeilte Richtung oder einen Kreisel vorziehen.",
  "geodesy.local-grid-too-few":
    "Das Baustellennetz hat {found} gemeinsame Punkte mit dem Kartennetz; mindestens {expected} sind nötig.",
  "geodesy.local-grid-bad-number":
    "Eine Koordinate des gemeinsamen Punkts {point} fehlt oder ist keine Zahl.",
  "geodesy.local-grid-one-place":
    "Die gemeinsamen Punkte liegen an einem Ort; die Richtung des Baustellennetzes lässt sich nicht finden. Weit auseinanderliegende Punkte angeben.",
  "geodesy.local-grid-residual":
    "Der gemeinsame Punkt {point} liegt {found} m neben dem eingepassten Baustellennetz; erwartet wurden höchstens {expected} m. Seine Koordinaten in beiden Netzen prüfen.",
  "geodesy.local-grid-reversed":
    "Die gemeinsamen Punkte passen nur, wenn eine Achse des Baustellennetzes andersherum läuft oder in einem der beiden Netze Ost und Nord vertauscht sind.",
  "geodesy.local-grid-exchanged":
    "Die gemeinsamen Punkte passen, wenn in einem der beiden Netze die Koordinaten von {first} und {second} vertauscht werden. Beide Punkte prüfen.",
  "geodesy.local-grid-scale":
    "Der Maßstab zwischen Baustellennetz und Kartennetz ist {found}; erwartet wurde {expected}. Die gemeinsamen Punkte und den Maßstab des Kartennetzes prüfen.",
};
