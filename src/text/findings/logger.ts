import type { Sentences } from "./sentences.ts";

export const loggerSentences: Sentences = {
  "logger.binary":
    "Found the character {found}, which no text holds; expected {expected}. The file is damaged, or it is no export of readings.",
  "logger.cell-count":
    "Found {found} cells in the row; expected {expected}. Its cells cannot be told apart, so the row is not taken.",
  "logger.cell-number": 'Found "{found}"; expected {expected}. It is never read as 0.',
  "logger.cell-time":
    'Found "{found}"; expected {expected}. Check the order of day and month, or the role of the column.',
  "logger.checksum":
    "Found the checksum {found}; expected {expected}. The line was damaged on its way; nothing of it is used.",
  "logger.depth-repeated":
    "Found the depth {found} again, after line {other}; expected {expected}. Both rows are kept; look which one holds.",
  "logger.depth-turns":
    "The depth turns back to {found} after line {other}; expected {expected}. From here on the rows count as the other way through the hole.",
  "logger.directions-made":
    "Found {found}; they are turned into {expected}. A tilt zero cannot be applied afterwards: the tilts must come without one.",
  "logger.encoding": "Found {found}; expected {expected}. Choose another encoding.",
  "logger.footer": 'Lines below the last reading are passed over: {found}, beginning with "{expected}".',
  "logger.gap": "Found a step of {found}; expected {expected}. Nothing was read in between.",
  "logger.no-checksum":
    "Found {found} sentences without {expected}. They are read; damage in them cannot be seen.",
  "logger.no-depth": "Found {found} as the depth; expected {expected}. Nothing is put in its place.",
  "logger.no-readings":
    "Found {found}; expected {expected}. Check the separator and the encoding, or the line of the first reading.",
  "logger.not-a-row": 'Found "{found}" among the readings; expected {expected}. The line is not taken.',
  "logger.not-open": "The file is not open any more. Choose it again; nothing was written.",
  "logger.over-range":
    "Found {found}; expected {expected}. It is over the range or stands for no reading, and is left empty.",
  "logger.role-missing":
    "Found {found} for what a run needs; expected {expected} as well. Say which column it is.",
  "logger.rows-above":
    "Found {found} rows of numbers above the table, which begins at line {expected}. They are not taken; choose an earlier first line if they are readings.",
  "logger.rows-left-out":
    "{found} of {expected} rows lack a value that the run needs. They are not taken; each is named.",
  "logger.sentence-form": 'Found "{found}"; expected {expected}. The line is not taken.',
  "logger.template-form": "This is no mapping that can be read: found {found}; expected {expected}.",
  "logger.turn-carried-on":
    "The turn begins anew {found} times at a full turn of {expected}°. It is carried on across it.",
  "logger.unit-clash":
    "Found {found}; expected {expected}, as in the other accelerations. All three must be in one unit.",
  "logger.value-missing":
    'Found "{found}"; expected {expected}. No reading was taken here; nothing is put in its place.',
  "logger.why-code-page":
    "Some bytes are no UTF-8, so the file is read as {found}. Look whether letters and the degree sign are right.",
  "logger.why-continuous": "{found} of {expected} depths are the same as the one before.",
  "logger.why-convention":
    "The file does not say this. Check it against a hole or a pose whose lean you know.",
  "logger.why-convention-usual": "Nothing in the file speaks against the usual way.",
  "logger.why-date-order": '"{found}" can be read in no other way.',
  "logger.why-date-order-open": '"{found}" can be read with the day or with the month first.',
  "logger.why-decimal": '"{found}" can be read in no other way.',
  "logger.why-decimal-both": 'Both signs are used: "{found}" and "{expected}".',
  "logger.why-decimal-none": "No number shows a decimal sign.",
  "logger.why-decimal-open": '"{found}" can be read with either sign.',
  "logger.why-depths-negative": "Most depths are negative.",
  "logger.why-depths-positive": "Most depths are positive or 0.",
  "logger.why-first-line": "Rows of numbers begin at line {found}.",
  "logger.why-given": "Set by hand.",
  "logger.why-heading-line": "Line {found} holds words above the numbers.",
  "logger.why-inclination-steep": "Most inclinations are over 60°, as if counted from the horizontal.",
  "logger.why-last-line": "The last row of numbers stands in line {found}.",
  "logger.why-mark": "The file begins with the mark of {found}.",
  "logger.why-missing": "These stand in place of a number: {found}.",
  "logger.why-no-dates": "No date is there whose order is in doubt.",
  "logger.why-no-heading": "No line of words stands above the numbers.",
  "logger.why-no-slope": "No tilt is given as a slope.",
  "logger.why-no-thousands": "No number shows one.",
  "logger.why-no-unit": "It has no unit.",
  "logger.why-no-units-line": "No line holds only units.",
  "logger.why-nothing-missing": "Every cell that should be a number is one.",
  "logger.why-one-column": "No separator splits the lines evenly.",
  "logger.why-role-depths": "Its numbers grow from row to row. Nothing else says so.",
  "logger.why-role-taken": "Another column has been taken for {found}.",
  "logger.why-role-times": "Its cells are dates or times.",
  "logger.why-role-unknown": 'The heading "{found}" names nothing that is known.',
  "logger.why-role-word": 'The heading "{found}" says so.',
  "logger.why-sentences": "{found} of {expected} lines are sentences that begin with $ or !.",
  "logger.why-separator": "It splits {found} of {expected} lines into the same number of cells.",
  "logger.why-slope-small": "The leans are so small that both come to the same.",
  "logger.why-slope-steep": "Some leans are over 3°, where the two differ by more than a thousandth.",
  "logger.why-stops": "Most depths differ from the one before.",
  "logger.why-template": 'From the mapping "{found}".',
  "logger.why-thousands": 'Seen in "{found}".',
  "logger.why-unit-any": "Any one unit will do for accelerations.",
  "logger.why-unit-usual":
    "The file gives no unit; {found} is usual. Check it against a value that you know.",
  "logger.why-unit-written": '"{found}" stands in the file.',
  "logger.why-units-line": "Line {found} holds only units.",
  "logger.why-utf8": "Every byte can be read as UTF-8.",
  "logger.why-workbook": "The file is a workbook.",
  "logger.why-z-negative": "The z values are negative, as of a sensor whose z points down.",
  "logger.why-z-positive":
    "The z values are positive: z points up, or the sensor shows gravity instead of the reaction to it.",
  "logger.why-zeros": "Every other byte is zero, as in {found}.",
  "logger.why-zone-open": "The times have no zone; without one they are taken as UTC.",
  "logger.why-zone-written": "The times need none, or carry their own.",
  "logger.word-unknown":
    'Found "{found}"; expected one of: {expected}. The row counts as if nothing stood there.',
};
