import type { Sentences } from "./sentences.ts";

export const surveySentences: Sentences = {
  "survey.no-depth-scale":
    "Run {run} gives depth as counts but names no depth-scale calibration, so its depths are not known.",
  "survey.depth-return":
    "Run {run}: the depth device shows {misclosure_m} m more at the end than at the start, both at the top (limit {limit_m} m). The difference was spread over the travel; look for slip.",
  "survey.upside-down":
    "Run {run}: the acceleration along the hole points the wrong way here. The sensor shows gravity instead of the reaction to it, or the probe was upside down. The row was left out.",
  "survey.magnitude":
    "Run {run}: the total acceleration varies by {spread_percent} % (limit {limit_percent} %). A probe at rest shows the same total in every attitude; it may have moved, or a sensor is in trouble.",
  "survey.zeroed-by-instrument":
    "Run {run} says its tilts are already zeroed; calibration {calibration} was not applied again.",
  "survey.accelerometer-undetermined":
    "Calibration {calibration} has {positions} positions that do not determine the accelerometers; at least six different ones are needed. Readings were used as they stand.",
  "survey.no-groove-bearing":
    "Run {run} was keyed to a groove but no groove bearing is given, so its directions are not known.",
  "survey.spiral-short":
    "The spiral of run {run} is given down to {spiral_to_m} m but readings go to {read_to_m} m. Below, the last twist was kept.",
  "survey.no-heading":
    "Run {run} has neither an opening nor a closing heading, so its directions are not known.",
  "survey.no-latitude":
    "Run {run} carries its heading by a gyro, but the latitude of the site is not given, so the turn of the earth cannot be taken out.",
  "survey.reference-row-unusable":
    "Run {run}: a heading is known at this row, but the row has no usable tilt, depth, time or turn.",
  "survey.heading-open":
    "Run {run} has only one known heading; drift of the gyro during the run does not show and was not taken out.",
  "survey.closure-model": "Run {run} asks for the closure {asked}; {used} was used instead ({why}).",
  "survey.misclosure":
    "Run {run}: the closing heading is off by {misclosure_deg} deg, limit {limit_deg} deg. The path is worked out, but nothing is judged by it.",
  "survey.no-direction":
    "Run {run}: no direction can be worked out at {depth_m} m (a tilt, turn or azimuth is missing or impossible). The reading was left out.",
  "survey.too-few-stations": "Run {run} has {stations} usable stations; a path needs two or more.",
  "survey.face-sum":
    "Run {run}: at {depth_m} m the sum of the two faces is off by {departure_deg} deg from the usual (scatter {scatter_deg} deg). Repeat this stop.",
  "survey.passes-disagree":
    "Run {run}: its passes differ by more than their noise explains (chi-square {chi_square} on {degrees_of_freedom}); most at {depth_m} m, pass {pass}, {largest} standard deviations.",
  "survey.runs-disagree":
    "Runs on {element} differ by more than their noise explains (chi-square {chi_square} on {degrees_of_freedom}); most at {depth_m} m in run {pass}, {largest} standard deviations.",
  "survey.reversed":
    "Run {run}: the direction turns by {dogleg_deg} deg between {from_m} m and {to_m} m. No hole does that; a reading, a face or an axis is wrong.",
  "survey.sharp-turn":
    "Run {run}: the direction turns by {dogleg_deg} deg between {from_m} m and {to_m} m, sharper than holes bend. Look at the readings around it.",
  "survey.top-unread":
    "Run {run}: the first station is at {first_m} m. From the top down to it, the first direction was carried upwards.",
  "survey.above-top": "Run {run}: the first station lies {first_m} m above the reference top.",
  "survey.gap":
    "Run {run}: nothing was read between {from_m} m and {to_m} m (limit {limit_m} m). The path there is drawn through, not measured.",
  "survey.leans-opposite":
    "{element} leans {lean_deg} deg towards {bearing_deg} deg, away from the design bearing {design_bearing_deg} deg. Faces, axes or groove bearing may be mistaken, or it is another hole.",
  "survey.no-run": "Not surveyed.",
  "survey.no-usable-run": "No run could be worked out.",
  "survey.run-blocked": "Run {run} has a heading misclosure over its limit.",
};
