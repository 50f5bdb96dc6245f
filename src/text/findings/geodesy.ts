import type { Sentences } from "./sentences.ts";

export const geodesySentences: Sentences = {
  "geodesy.crs-local":
    "The site grid is local, so its direction against true north is not known. Give convergence_deg, or give the heading from grid north.",
  "geodesy.crs-not-epsg":
    'The coordinate system "{crs}" is not understood. Expected "EPSG:" and a number, for example EPSG:32631, or "local".',
  "geodesy.crs-geographic":
    "{crs} counts in latitude and longitude; expected a map grid in metres. Name the grid of the coordinates.",
  "geodesy.crs-refused":
    "{crs} cannot be used for north here ({reason}). Give convergence_deg from the survey authority.",
  "geodesy.crs-unknown":
    "{crs} is not in the list of map grids that comes with the program. Check the number, or give convergence_deg.",
  "geodesy.needs-grid-file":
    "Turning satellite positions into {crs} needs the grid file {file}, which this program does not carry. Give grid coordinates from the site survey.",
  "geodesy.datum-accuracy":
    "Satellite positions can be turned into {crs} to {found} m only; {expected} m was asked for. Give grid coordinates from the site survey.",
  "geodesy.place-out-of-reach":
    "The place of the site cannot be reached by {crs} ({name}). Check the coordinates, the coordinate system, and latitude and longitude.",
  "geodesy.no-single-convergence":
    "At this place {crs} ({name}) turns bearings by different amounts in different directions, so no single convergence holds. Name the survey grid of the site.",
  "geodesy.outside-area":
    "The site at latitude {latitude}, longitude {longitude} lies outside the area for which {crs} ({name}) is meant. Check the coordinates and the coordinate system.",
  "geodesy.scale-far-from-one":
    "A metre on the ground is {scale} m in {crs} at this place. Expected a survey grid close to 1. Check the coordinate system.",
  "geodesy.bad-date": 'The date "{date}" is not understood. Expected year-month-day, for example 2026-03-02.',
  "geodesy.bad-place":
    "The latitude, longitude or height of the site is missing or impossible. Expected latitude between -90 and 90 and longitude between -180 and 180 degrees.",
  "geodesy.date-outside-model":
    "The date {date} lies outside the magnetic model {model}, which holds from the start of {from} to the start of {to}. Give declination_deg.",
  "geodesy.no-compass-here":
    "The horizontal magnetic field is only {horizontal} nT here, too weak for a compass. Use a sighted or gyro heading.",
  "geodesy.weak-horizontal-field":
    "The horizontal magnetic field is only {horizontal} nT here; compass headings are poor. Prefer a sighted or gyro heading.",
  "geodesy.local-grid-too-few":
    "The site grid has {found} common points with the map grid; at least {expected} are needed.",
  "geodesy.local-grid-bad-number": "A coordinate of the common point {point} is missing or not a number.",
  "geodesy.local-grid-one-place":
    "The common points lie in one place, so the direction of the site grid cannot be found. Give points well apart.",
  "geodesy.local-grid-residual":
    "The common point {point} misses the fitted site grid by {found} m; at most {expected} m was expected. Check its coordinates in both grids.",
  "geodesy.local-grid-reversed":
    "The common points fit only if one axis of the site grid runs the other way, or if east and north are exchanged in one of the two grids.",
  "geodesy.local-grid-exchanged":
    "The common points fit if the coordinates of {first} and {second} are exchanged in one of the two grids. Check both points.",
  "geodesy.local-grid-scale":
    "The scale between site grid and map grid is {found}; {expected} was expected. Check the common points and the scale of the map grid.",
};
