import type { Sentences } from "./sentences.ts";

export const formatsSentences: Sentences = {
  "formats.acceleration-odd":
    "The three accelerations add up to {found} here, in the other rows to about {expected}. At rest all rows show the same; the probe may have moved.",
  "formats.acceleration-zero":
    "All three accelerations are 0; expected gravity. The sensor gave nothing, so the run cannot be worked out.",
  "formats.attitude-incomplete":
    "The gyro zero was taken at an incline, but found {found}; expected {expected}. The calibration is not used.",
  "formats.azimuth-north-missing":
    "Found {found} that says from which north the azimuths count; expected {expected}. The run cannot be worked out.",
  "formats.bearing-without-rake": "Found {found}; expected {expected}. The element is taken as plumb.",
  "formats.budget-unknown":
    'Found "{found}", which is no class of instrument; expected {expected}. The usual class is taken.',
  "formats.calibration-ended":
    "Calibration {id} was ended before the run: {found}; expected {expected}. It was used all the same; calibrate again.",
  "formats.calibration-expired":
    "Found {found}; expected {expected}. It was used all the same; name a calibration that still held.",
  "formats.calibration-later":
    "Found {found}; expected {expected}. It was used, since a check after the run is usual; see that the right one is named.",
  "formats.calibration-missing":
    "Found {found} among the calibrations of the run; expected {expected}. The run is worked out without it, and its error is not known.",
  "formats.calibration-of-other":
    "Found {found}; expected {expected}. A calibration of another instrument is not used.",
  "formats.calibration-twice":
    "The run names more than one calibration of the same kind: {found}; expected {expected}. Keep the one that holds.",
  "formats.calibration-undated":
    "Found {found} for the run, so nobody can say whether its calibrations still held; expected {expected}.",
  "formats.calibration-unknown":
    "Found calibration {found}, which the job does not have; expected {expected}.",
  "formats.calibration-unusable":
    "Calibration {found} has errors of its own and is not used; expected {expected}.",
  "formats.calibration-used-up":
    "Found {found}; expected {expected}. It was used all the same; calibrate again.",
  "formats.calibration-zero": "Found {found}; expected {expected}. The calibration is not used.",
  "formats.cell-angle": 'Found "{found}"; expected {expected}.',
  "formats.cell-choice": 'Found "{found}"; expected one of: {expected}.',
  "formats.cell-count":
    "Found {found} cells in the row; expected {expected}, as many as there are headings. A separator is missing or one too many, or the row is cut off.",
  "formats.cell-empty": "Found {found}; expected {expected}. Nothing is put in its place.",
  "formats.cell-not-a-reading":
    'Found "{found}", which stands for a reading that was not taken; expected {expected}. It is never read as a number.',
  "formats.cell-number": 'Found "{found}"; expected {expected}. It is never read as 0.',
  "formats.cell-range":
    "Found {found}; expected {expected}. Look for a wrong unit, a shifted column or a slip of the keys.",
  "formats.cell-time": 'Found "{found}"; expected {expected}, for example 2026-03-02T07:10:00Z.',
  "formats.column-duplicate":
    'The heading "{found}" stands there again; expected {expected}. Delete or rename one.',
  "formats.column-missing": 'Found {found}; expected a column headed "{expected}".',
  "formats.column-mistyped":
    'The heading "{found}" is not known; expected "{expected}" perhaps. The column is passed over; mend the heading if it is meant.',
  "formats.column-unit":
    'Found the heading "{found}"; expected {expected}. Every number\'s unit stands in its heading; this one is unknown or missing. Convert the column and rename it.',
  "formats.column-unknown":
    "Found {count} columns that are none of the {expected}: {found}. They are passed over.",
  "formats.continuous-measures":
    "Found {found} logged continuously; expected {expected}. Give a row for each stop instead.",
  "formats.convergence-missing":
    "The angle does not count from grid north, and the grid is {found}; expected {expected}. The run cannot be turned to grid.",
  "formats.coordinates-swapped":
    "Easting and northing look swapped: found {found}; expected {expected}, beside the other elements.",
  "formats.count-without-scale":
    "Depths are given as {found}; expected {expected} in the run. Without it there are no depths.",
  "formats.criteria-set-unknown":
    'Found "{found}", which is no ready-made set of criteria; expected {expected}.',
  "formats.criterion-field":
    'Found "{found}"; expected {expected}. The criterion is left out, and nothing is judged by it.',
  "formats.criterion-idle":
    "The criterion is for {found}, which fits no element; expected {expected}. Nothing is judged by it.",
  "formats.criterion-unknown":
    'Found "{found}", which is no kind of criterion; expected {expected}. Nothing is judged by it.',
  "formats.cutoff-outside": "The cut-off level is {found}; expected {expected}. It is taken as not given.",
  "formats.decimal-ambiguous":
    'Found "{found}", which may be a thousand and more or a little over one; expected {expected}. Nothing in the file tells which.',
  "formats.decimal-clash":
    'Found "{found}", with another decimal sign than "{expected}" in line {other}. Expected one decimal sign in a file; save it again with one.',
  "formats.decimal-comma-separator":
    'Found rows such as "{found}", where the comma separates cells and decimals alike; expected {expected}.',
  "formats.declination-missing":
    "The angle counts from magnetic north, and found {found}; expected {expected}. The run cannot be turned to grid.",
  "formats.depth-and-count": "Found {found} depth_m and count; {expected}.",
  "formats.depth-beyond-toe":
    "Depth {found} m is far below what was to be built; expected {expected}. Is it the right element, and are depths in metres?",
  "formats.depth-reversal":
    "Depth {found} after {other}; expected {expected} within a leg. Check the leg and the order of the rows.",
  "formats.depth-step": "The depth goes from {found}; expected {expected}. A station may be missing.",
  "formats.element-unknown": 'Found "{found}", which the schedule does not have; expected {expected}.',
  "formats.element-unusable": "The line of element {found} in the schedule has errors; expected {expected}.",
  "formats.encoding":
    "Found {found}, which is no {expected}. Save the file again as {expected}; no letter is guessed.",
  "formats.faces-unpaired": "Found {found}; expected {expected}. The calibration is not used.",
  "formats.file-empty": "Found {found}; expected {expected}.",
  "formats.file-missing": "Found no file {found}; expected {expected}.",
  "formats.file-too-large": "Found {found} bytes; expected at most {expected}. The file is not read.",
  "formats.groove-missing":
    "Found {found} for the groove; expected {expected}. The run cannot be worked out.",
  "formats.gyro-zero-missing":
    "Found {found} among the calibrations; expected {expected}. The drift is taken from the closing reference alone.",
  "formats.gyro-zero-rate":
    "The gyro zero gives {found} of its rate and a log at rest; expected {expected}. The calibration is not used.",
  "formats.id-repeated":
    "{found} stands there a second time (first: {other}); expected {expected}. The first one is kept.",
  "formats.instrument-unknown": "Found instrument {found}, which the job does not have; expected {expected}.",
  "formats.json-choice": "Found {found}; expected one of: {expected}.",
  "formats.json-format": 'Found format {found}; expected "{expected}". This is no job that can be read.',
  "formats.json-key-repeated":
    "The key {found} stands there twice; expected {expected}. The first one is kept.",
  "formats.json-missing": "Found {found}; expected {expected}.",
  "formats.json-range": "Found {found}; expected {expected}.",
  "formats.json-syntax": "This is no JSON: found {found}; expected {expected}. The job cannot be read.",
  "formats.json-type": "Found {found}; expected {expected}.",
  "formats.json-unknown-key": 'The key "{found}" is not known and is passed over; expected {expected}.',
  "formats.kind-unknown":
    'Found "{found}", which is no kind of element; expected {expected}. The line is left out.',
  "formats.leg-order": 'Found leg "{found}" here; expected {expected}.',
  "formats.line-too-long":
    "Found a line of {found} characters; expected at most {expected}. The file is damaged and is not read.",
  "formats.local-north-as-true":
    "Found the grid {found}; expected {expected}. The north of the grid was taken as true north.",
  "formats.log-condensed": "Logged continuously: from {found} rows {expected} readings at rest were made.",
  "formats.log-no-stop":
    "In the {found} rows of the log the probe is never at rest; expected {expected}. Look at the depth, or allow more with steady.",
  "formats.no-criteria": "Found {found}; expected {expected}. Paths are worked out, but nothing is judged.",
  "formats.no-rows": "Found {found}; expected {expected}.",
  "formats.date-from-calibration":
    "The run has {found}; expected {expected}. The declination was taken for {used}, the day of its latest calibration.",
  "formats.north-without-date":
    "The declination changes from year to year, and found {found} for the run; expected {expected}. The run cannot be turned to grid.",
  "formats.not-text": "Found {found}; expected {expected}. Save the file again as UTF-8.",
  "formats.not-xlsx": "Found {found}; expected {expected}.",
  "formats.not-zip": "The archive cannot be read: found {found}; expected {expected}.",
  "formats.opening-missing":
    "Found {found} for the opening; expected {expected}. The heading is worked back from the other references.",
  "formats.place-far":
    "The elements lie about {found} in {crs}, but expected them near latitude and longitude {expected}. Check crs, latitude and longitude.",
  "formats.position-far":
    "Found the position {found}; expected one {expected}, where the others are, {distance} m away.",
  "formats.position-repeated": "The position {found} is that of {other} too; expected {expected}.",
  "formats.quote-open":
    "A double quote is not closed: found {found}; expected {expected} at the end of the cell.",
  "formats.rake-without-bearing":
    "The element leans, but found {found} for the bearing; expected {expected}. The line is left out.",
  "formats.readings-shared": "The readings file {found} is that of run {other} too; expected {expected}.",
  "formats.readings-unused": "No run names the file {found}; expected {expected}. It is passed over.",
  "formats.reference-missing":
    "Found {found} for the opening, and no other reference; expected {expected}. Without one the run has no heading.",
  "formats.reference-not-at-top":
    "The row of this reference, in line {line}, stands at a depth of {found} m; expected {expected}. Add rows with leg open and close.",
  "formats.reference-unused": "Found {found}; expected {expected}. It is passed over.",
  "formats.rest-log-gap":
    "The log at rest has a step of {found}; expected {expected}. Its noise is worked out as if the rows were even.",
  "formats.rest-log-jump":
    "The rate jumps here by {found} deg/h, in {count} places in all; expected {expected}. The probe was touched; take the log again.",
  "formats.rest-log-short":
    "The log at rest lasts {found}; expected {expected}. It shows nothing of what limits the gyro in a run.",
  "formats.rest-log-too-short": "The log at rest has {found}; expected {expected}. No zero is made of it.",
  "formats.rest-log-trend":
    "The rate changes by {found} deg/h over the log; expected {expected} deg/h. The gyro was not warm, or the probe not at rest.",
  "formats.schedule-swapped":
    "Eastings and northings of the whole schedule look swapped: found about {found}; expected about {expected} at the place of the job.",
  "formats.section-incomplete": "Found {found}; expected {expected}. The section counts as not given.",
  "formats.spiral-order": "Found depth {found} in the spiral; expected {expected}.",
  "formats.start-with-tube": "Found {found}; expected {expected}.",
  "formats.station-repeated":
    "The depth {found} was read before, in line {other}; expected {expected}. Both readings are used; set one aside if it is wrong.",
  "formats.stop-without-reading":
    "The pause of {seconds} s at {depth} gives no reading: {found}; expected {expected}.",
  "formats.ties-unmatched": "Found {found}; expected {expected}.",
  "formats.tilts-impossible": "The two tilts {found} degrees cannot come together; expected {expected}.",
  "formats.time-backwards": "The time is {found} than in the row before; expected {expected}.",
  "formats.time-midnight":
    'The time of day falls to "{found}"; expected {expected}. It is taken as the next day.',
  "formats.time-mixed":
    'The time "{found}" is written in another form than in the first row; expected {expected}.',
  "formats.time-without-zone": "Found {found}; expected {expected}. It is read as UTC.",
  "formats.toe-above-head": "The toe level is {found}; expected {expected}. It is taken as not given.",
  "formats.too-few-rows": "Found {found} rows of readings; expected {expected}.",
  "formats.too-many":
    "{hidden} more findings of this file are not shown; mend the first {shown} and check again.",
  "formats.too-many-rows":
    "Found {found} rows with {cells} cells; expected at most {expected} rows. The file is not read.",
  "formats.tube-not-named":
    "Found {found} in the run; expected {expected}. The run is taken as one in the element's own bore.",
  "formats.tube-unknown": 'Found tube "{found}"; expected {expected}.',
  "formats.tube-unusable": "The line of tube {found} has errors; expected {expected} that can be read.",
  "formats.tube-without-position": "Found {found}; expected {expected}.",
  "formats.two-schedules": "Found {found}; expected {expected}. Only elements.csv is read.",
  "formats.utf16-read":
    "Found text in {found}; expected {expected}. It was read all the same; save it again as UTF-8.",
  "formats.xlsx-unreadable": "The workbook cannot be read: found {found}; expected {expected}.",
  "formats.zero-not-applied": "Found {found}; expected {expected}. The tilt zero is not applied again.",
  "formats.zip-damaged":
    "The archive is damaged or lies: {found} does not have the size or the check sum stated. Nothing of it is used.",
  "formats.zip-link": "The archive holds a link, {found}. Nothing is unpacked.",
  "formats.zip-name-twice":
    "The archive holds {found} twice, or under names that some systems take for one. Nothing is unpacked.",
  "formats.zip-overlap":
    "Files of the archive share the same bytes ({found}), as in an archive made to fill disks. Nothing is unpacked.",
  "formats.zip-packing":
    "{found} is encrypted, or packed in a way that is not read here. Pack the archive in the usual way.",
  "formats.zip-path":
    "The archive holds {found}, which leads out of it; expected {expected}. Nothing is unpacked.",
  "formats.zip-swells":
    "The archive would unpack to {found} bytes in {files} files; at most {expected} bytes are read. Nothing is unpacked.",
  "formats.zip-without-job": "Found {found} in the archive; expected {expected}.",
};
