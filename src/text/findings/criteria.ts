import type { Sentences } from "./sentences.ts";

export const criteriaSentences: Sentences = {
  "criteria.no-path": "Nothing was surveyed that can be judged.",
  "criteria.nothing-read": "No part of the element was read below the commencing surface.",
  "criteria.unread-station":
    "Station {station} has no usable reading, so nothing that depends on it can be judged.",
  "criteria.depth-order": "Station {station} is not deeper than the one before it.",
  "criteria.design-incomplete":
    "The design of {element} is incomplete: its head position, or the bearing of its rake, is missing from the schedule.",
  "criteria.no-cutoff": "The schedule gives no cut-off level, which this rule needs.",
  "criteria.no-toe": "The schedule gives no toe level, so the length that this rule needs is not known.",
  "criteria.no-section": "The schedule gives no diameter or width, which this rule needs.",
  "criteria.no-step":
    "The table of the rule has no row for this element: its {measure} is {found}, and the last row ends at {last}.",
  "criteria.no-limit": "The rule gives no limit.",
  "criteria.level-not-read": "Level {level_m} m was not read.",
  "criteria.toe-not-read": "The readings stop too far above the toe.",
  "criteria.own-line-not-read":
    "The element was not read from end to end, so its own straight line is not known.",
  "criteria.too-short": "Only {read_m} m was read; the rule needs {needed_m} m.",
  "criteria.not-downward": "The path does not lead down towards level {level_m} m, so it has no lean there.",
  "criteria.not-a-number": "A number that the verdict needs is missing.",
  "criteria.unknown-kind": "There is no criterion called {kind}.",
  "criteria.no-probability":
    "No uncertainty is known for this value, so it was held against its limit as it stands instead of by the {rule} rule.",
  "criteria.neither-shown":
    "The probability of being within is {probability}: too little to call it within and too much to call it outside at {asked}.",
  "criteria.within-not-shown":
    "The probability of being within is {probability}; the rule agreed beforehand asks for {asked}.",
  "criteria.outside-on-part": "Only a part was read, and that part alone is outside.",
  "criteria.only-part-read": "Only a part was read; what was read is within, the rest is not known.",
  "criteria.on-along": "The value is the part along.",
  "criteria.on-across": "The value is the part across.",
  "criteria.on-rake": "The value is the difference of the rake.",
  "criteria.on-bearing": "The value is the difference of the bearing.",
  "criteria.on-tube": "The value is that of tube {tube}.",
  "criteria.plumb": "The element is designed plumb, so there is no rake to judge.",
  "criteria.no-bearing": "The element came out plumb, so it has no bearing to compare.",
  "criteria.no-tube": "No tube of the element was surveyed.",
  "criteria.no-probe-length": "Neither the rule nor the instrument gives the length of the probe.",
  "criteria.no-probe-diameter": "Neither the rule nor the instrument gives the diameter of the probe.",
  "criteria.no-inner-diameter":
    "Tube {tube} has no inner diameter in the list of tubes, and the rule gives none.",
  "criteria.clause-from-memory":
    "The clause must be confirmed before use: value from memory ({document}, {clause}).",
};
