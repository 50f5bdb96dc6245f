/** Texts of conflicts. */
export const en = {
  title: "Conflicts",
  lead: "Fields that two people have changed without knowing of each other. Pick what holds; the other stays in the history.",
  working: "What each value means for the results is being worked out.",
  emptyTitle: "No conflicts",
  emptyText:
    "When two people change one field without knowing of each other, both values stand here until somebody picks one.",
  toHistory: "To the history",
  signingTitle: "Reports and verdicts that these fields touch cannot be signed until they are settled.",
  conflict: "{field}: {thing}",
  value: "Value {letter}",
  by: "{author} on {device}, {when} by its clock",
  used: "The program reckons with this one until somebody decides.",
  before: "Before both: {value}",
  beforeNothing: "Before both, nothing was written here.",
  effects: "What it means for the results",
  effectNone: "No result changes, whichever is kept.",
  effectSame:
    "{count, plural, one {The verdict on {element} stays the same; only its numbers change.} other {The verdicts on # elements stay the same; only their numbers change.}}",
  effectOne: "The verdict on {element} changes from {from} (A) to {to} (B).",
  effectMany: "The verdict on {element} depends on it: {list}.",
  effectOfLetter: "{verdict} with {letter}",
  effectMore: "{count, plural, one {# more verdict changes.} other {# more verdicts change.}}",
  effectLeftOut:
    "{count, plural, one {# more element would have other numbers; it was not worked out here.} other {# more elements would have other numbers; they were not worked out here.}}",
  noElement: "not in the job",
  keep: "Keep {letter}",
  writeNew: "Write new",
  newValue: "Another value for {field}",
  newSend: "Write it",
  newCancel: "Leave it",
  newMissing: "Type the value that holds.",
  kept: "{field} of {thing} is settled: {value}. The other value stays in the history.",
  onlyHere:
    "This field holds more than one number or text, so one of the two has to be kept; change it on its own screen afterwards.",
};
