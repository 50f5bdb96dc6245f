import type { Issue } from "#core";
import type { DeviceInEvidence, EvidenceReport, HeadInEvidence, SealInEvidence } from "#evidence";
import { sentenceOf } from "#text";
import { type Column, tableLines } from "../terminal/table.ts";
import type { Terminal } from "../terminal/terminal.ts";

/** Findings shown; --json has more. */
const SHOWN = 20;
/** Digits of a key or a root that people compare. */
const DIGITS = 16;

/**
 * An evidence report for people: the answer in one sentence first, then devices, signatures and heads, then what was found and what
 * cannot be seen from the file alone. Texts that come from the file are shown without control characters.
 */
export function evidenceLines(report: EvidenceReport, { signs }: Pick<Terminal, "signs">): string[] {
  const { devices, seals, heads, knownHeads, findings, notChecked } = report;
  const word = (fits: boolean) => (fits ? `${signs ? "✓ " : ""}fits` : `${signs ? "✗ " : ""}DOES NOT FIT`);
  const lines = [answerLine(report)];
  const section = (title: string, inside: readonly string[]) => {
    if (inside.length > 0) lines.push("", title, ...inside.map((line) => `  ${line}`));
  };
  section("Devices", rowsOf(deviceColumns(word), devices));
  section("Signatures of people", rowsOf(sealColumns(word), seals));
  section("Heads signed by the office", rowsOf(headColumns(word), heads));
  section(
    "Heads known from outside",
    knownHeads.map(({ size, root, fits }) => `${size}:${root.slice(0, DIGITS)}  ${word(fits)}`),
  );
  section("Found", findings.slice(0, SHOWN).map(findingLine));
  if (findings.length > SHOWN) lines.push(`  … and ${findings.length - SHOWN} more; --json has them.`);
  section(
    "Not to be seen from this file alone",
    notChecked.map((issue) => sentenceOf(issue)),
  );
  return lines.map(plain);
}

/** The answer and, where one entry is to blame, which it is and why. */
function answerLine({ answer, firstBad, verdict }: EvidenceReport): string {
  const sentence = sentenceOf(answer);
  if (firstBad === undefined || verdict === "sound") return sentence;
  const { place, upTo, device, sequence, kind, issue } = firstBad;
  const where = place === upTo ? `Entry ${place}` : `Entries ${place} to ${upTo}`;
  const which =
    device === undefined
      ? ""
      : ` (${kind === undefined ? "" : `${kind}, `}number ${sequence ?? "?"} of device ${device.slice(0, DIGITS)})`;
  return `${sentence} ${where}${which}: ${sentenceOf(issue)}`;
}

function findingLine({ place, ...issue }: Issue): string {
  const where = [place.file, place.line].filter((part) => part !== undefined).join(":");
  return `${issue.severity}  ${where === "" ? "" : `${where}: `}${sentenceOf(issue)}`;
}

function rowsOf<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): readonly string[] {
  return rows.length === 0 ? [] : tableLines(columns, rows);
}

type Word = (fits: boolean) => string;

const deviceColumns = (word: Word): readonly Column<DeviceInEvidence>[] => [
  { heading: "device", cell: ({ device }) => device.slice(0, DIGITS) },
  { heading: "name", cell: ({ name }) => plain(name) },
  { heading: "entries", align: "right", cell: ({ entries }) => String(entries) },
  { heading: "missing", align: "right", cell: ({ missing }) => missing.map(rangeText).join(", ") || "none" },
  { heading: "chain", cell: ({ isSound }) => word(isSound) },
];

const rangeText = ({ from, to }: { readonly from: number; readonly to: number }): string =>
  from === to ? String(from) : `${from}-${to}`;

const sealColumns = (word: Word): readonly Column<SealInEvidence>[] => [
  { heading: "who", cell: ({ name }) => plain(name) },
  { heading: "meaning", cell: ({ meaning }) => plain(meaning) },
  { heading: "about", cell: ({ about }) => plain(about) },
  { heading: "when", cell: ({ at }) => at },
  { heading: "signature", cell: ({ fits }) => word(fits) },
];

const headColumns = (word: Word): readonly Column<HeadInEvidence>[] => [
  { heading: "entries", align: "right", cell: ({ size }) => String(size) },
  { heading: "root", cell: ({ root }) => root.slice(0, DIGITS) },
  { heading: "when", cell: ({ at }) => at },
  { heading: "key", cell: ({ key }) => key },
  { heading: "head", cell: ({ fits }) => word(fits) },
];

/** A file from anywhere must not move the cursor or colour the answer of whoever checks it, nor turn the direction of writing. */
const plain = (text: string): string => text.replaceAll(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, "?");
