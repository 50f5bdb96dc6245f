import type { UnitId } from "./units.ts";

/** What a column is for. */
export const ROLES = [
  "none",
  "date",
  "time",
  "depth",
  "count",
  "tilt-x",
  "tilt-y",
  "acc-x",
  "acc-y",
  "acc-z",
  "turn",
  "heading",
  "inclination",
  "azimuth",
  "face",
  "leg",
  "temperature",
  "samples",
] as const;
export type Role = (typeof ROLES)[number];

/** What is measured, as far as units go. */
export type Quantity = "length" | "tilt" | "angle" | "acceleration" | "temperature" | "time" | "plain";

export const QUANTITY_OF: Readonly<Record<Role, Quantity>> = {
  none: "plain",
  date: "plain",
  time: "time",
  depth: "length",
  count: "plain",
  "tilt-x": "tilt",
  "tilt-y": "tilt",
  "acc-x": "acceleration",
  "acc-y": "acceleration",
  "acc-z": "acceleration",
  turn: "angle",
  heading: "angle",
  inclination: "tilt",
  azimuth: "angle",
  face: "plain",
  leg: "plain",
  temperature: "temperature",
  samples: "plain",
};

interface RoleWords {
  readonly role: Role;
  /** on the heading in small letters, without accents and without its unit */
  readonly words: RegExp;
  /** units with which a bare letter such as "x" means this role */
  readonly units?: readonly UnitId[];
  readonly sure: "certain" | "likely" | "open";
}

const TILT = "(?:tilt|slope|lean|pitch|roll|neig\\w*|inkl\\w*|incl\\w*|dev\\w*|inc)";
const ACC = "(?:acc\\w*|acel\\w*|beschl\\w*|g|a)";
const END = "[\\s_.-]*";
const ANGLES: readonly UnitId[] = ["deg", "rad", "mrad", "gon", "arcmin", "mm/m", "percent", "ratio"];
const FORCES: readonly UnitId[] = ["g", "mg", "m/s2"];

/** English, German, French, Spanish, Italian, Dutch. The first that fits counts. */
const WORDS: readonly RoleWords[] = [
  {
    role: "time",
    words: /^(date\W*time|datum\W*(uhr)?zeit|timestamp|zeitstempel|date et heure|fecha y hora)/,
    sure: "certain",
  },
  { role: "date", words: /^(date|datum|fecha|data|day|tag)$/, sure: "certain" },
  {
    role: "time",
    words: /^(time|zeit|uhrzeit|messzeit|heure|hora|ora|tijd|temps|utc|elapsed)( ?s)?$/,
    sure: "certain",
  },
  {
    role: "temperature",
    words: /^(temp\w*|temperatur\w*|sensor temp\w*|probe temp\w*|thermo\w*)\b/,
    sure: "certain",
  },
  { role: "depth", words: /^(depth|tiefe|teufe|messtiefe|bohrtiefe|prof\w*|diepte)\b/, sure: "certain" },
  { role: "depth", words: /^(md|measured depth|hole depth|depth\w*|z|cable|kabel\w*)$/, sure: "likely" },
  {
    role: "acc-x",
    words: new RegExp(`^${ACC}${END}x$|^x${END}(acc\\w*|beschl\\w*)`),
    sure: "certain",
  },
  {
    role: "acc-y",
    words: new RegExp(`^${ACC}${END}y$|^y${END}(acc\\w*|beschl\\w*)`),
    sure: "certain",
  },
  {
    role: "acc-z",
    words: new RegExp(`^${ACC}${END}z$|^z${END}(acc\\w*|beschl\\w*)`),
    sure: "certain",
  },
  { role: "acc-x", words: /^x$/, units: FORCES, sure: "certain" },
  { role: "acc-y", words: /^y$/, units: FORCES, sure: "certain" },
  { role: "acc-z", words: /^z$/, units: FORCES, sure: "certain" },
  {
    role: "tilt-x",
    words: new RegExp(`^${TILT}${END}(axis |achse )?(x|a|1)$|^(x|a)${END}${TILT}`),
    sure: "certain",
  },
  {
    role: "tilt-y",
    words: new RegExp(`^${TILT}${END}(axis |achse )?(y|b|2)$|^(y|b)${END}${TILT}`),
    sure: "certain",
  },
  { role: "tilt-x", words: /^(x|a|pitch)$/, units: ANGLES, sure: "likely" },
  { role: "tilt-y", words: /^(y|b|roll)$/, units: ANGLES, sure: "likely" },
  { role: "tilt-x", words: /^(x|pitch)$/, sure: "open" },
  { role: "tilt-y", words: /^(y|roll)$/, sure: "open" },
  {
    role: "azimuth",
    words: /^(azim\w*|azi|bearing|direction azim\w*|acimut|azimut)\b/,
    sure: "certain",
  },
  {
    role: "inclination",
    words: /^(inclination|inclinaison|inclinacion|inclinazione|inc|inklination|drift|zenith|dip|neigung)$/,
    sure: "likely",
  },
  {
    role: "turn",
    words: /^(turn|gyro\w*|rotation|dreh\w*|verdreh\w*|kreisel\w*|twist|giro|yaw)\b/,
    sure: "likely",
  },
  {
    role: "heading",
    words:
      /^(heading|head|hdg|hdt|gphdt 1|richtung|kurs|cap|rumbo|rotta|koers|compass|kompass|tool ?face|azim)\b/,
    sure: "likely",
  },
  { role: "count", words: /^(counts?|pulses?|ticks?|impulse|encoder|zahler|zaehler)\b/, sure: "likely" },
  { role: "face", words: /^(face|seite|lage|side|cara|faccia|zijde)$/, sure: "certain" },
  {
    role: "leg",
    words: /^(leg|pass|weg|fahrt|run direction|up\W?down|auf\W?ab|way|richtung der fahrt)$/,
    sure: "certain",
  },
  { role: "samples", words: /^(samples|anzahl|readings|n samples)$/, sure: "likely" },
];

/** Heading as the words above take it. */
export const plainHeading = (heading: string): string =>
  heading
    .normalize("NFD")
    .replaceAll(/\p{M}/gu, "")
    .toLowerCase()
    .replaceAll(/[_\s]+/g, " ")
    .replace(/[\s:.,;-]+$/, "")
    .trim();

/** The role that the words of a heading name; undefined where they name none. */
export function roleNamed(
  heading: string,
  units: readonly UnitId[],
): { readonly role: Role; readonly sure: RoleWords["sure"] } | undefined {
  const wanted = plainHeading(heading);
  return WORDS.find(
    (each) =>
      each.words.test(wanted) &&
      (each.units === undefined || each.units.some((unit) => units.includes(unit))),
  );
}
