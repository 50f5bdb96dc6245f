import { fail, type Issue, ok, type Place, type Result } from "#core";
import { geodesyIssue } from "../geodesy-issue.ts";
import type { EastNorth } from "../projection/projection.ts";
import { type CommonPoint, gridFromLocal, type LocalGrid, localGridScale } from "./local-grid.ts";

export interface LocalGridFit {
  readonly grid: LocalGrid;
  /** computed minus given map coordinates, metres, in the order of the points */
  readonly residuals: readonly EastNorth[];
  /** standard deviation of one coordinate; NaN with two points, which fit exactly */
  readonly sigma0M: number;
  /** what the fit says about the points: geodesy.local-grid-* */
  readonly findings: readonly Issue[];
}

export interface FitLimits {
  /** largest residual that counts as good, metres; the caller's choice, for the setting out at hand */
  readonly residualM: number;
  /** map distance over site distance that is expected, with the largest difference; undefined = any scale */
  readonly scale: { readonly expected: number; readonly largestDifference: number } | undefined;
}

/** A mistake is named only where putting it right makes the fit this many times better: chance does not. */
const CLEARLY_BETTER = 5;

/**
 * Lays a site grid on a map grid through common points: two exactly, more by least squares.
 *
 * With three or more points it also says when one axis of the site grid runs the other way, or when two points have their
 * coordinates exchanged. Two points fit in any case: only the scale can give a mistake away, so state the expected one.
 *
 * Errors: geodesy.local-grid-too-few, geodesy.local-grid-bad-number, geodesy.local-grid-one-place.
 * Findings: geodesy.local-grid-reversed, geodesy.local-grid-exchanged, geodesy.local-grid-residual, geodesy.local-grid-scale.
 * Frame: site grid to map grid.
 * Source: two-dimensional conformal transformation, Ghilani, Adjustment Computations, chapter 18; closed form about the centre.
 * Checked against: test/published/helmert-2d
 */
export function fitLocalGrid(
  points: readonly CommonPoint[],
  limits: FitLimits,
  place: Place = {},
): Result<LocalGridFit, readonly Issue[]> {
  if (points.length < 2)
    return fail([geodesyIssue("geodesy.local-grid-too-few", { found: points.length, expected: 2 }, place)]);
  const bad = points.find(({ local, grid }) =>
    [local.east, local.north, grid.east, grid.north].some((value) => !Number.isFinite(value)),
  );
  if (bad !== undefined)
    return fail([geodesyIssue("geodesy.local-grid-bad-number", { point: bad.name }, place)]);
  const grid = bestGrid(points);
  if (!(localGridScale(grid) > 0 && Number.isFinite(localGridScale(grid))))
    return fail([geodesyIssue("geodesy.local-grid-one-place", {}, place)]);
  const residuals = residualsOf(grid, points);
  const freedom = 2 * points.length - 4;
  const sigma0M = freedom > 0 ? Math.sqrt(sumOfSquares(residuals) / freedom) : Number.NaN;
  return ok({ grid, residuals, sigma0M, findings: findingsOf(points, grid, residuals, limits, place) });
}

/** Least squares in closed form about the centres. NaN where all points of the site grid are one. */
function bestGrid(points: readonly CommonPoint[]): LocalGrid {
  const localCentre = centreOf(points.map((point) => point.local));
  const gridCentre = centreOf(points.map((point) => point.grid));
  let along = 0;
  let across = 0;
  let squared = 0;
  for (const { local, grid } of points) {
    const x = local.east - localCentre.east;
    const y = local.north - localCentre.north;
    const east = grid.east - gridCentre.east;
    const north = grid.north - gridCentre.north;
    along += x * east + y * north;
    across += x * north - y * east;
    squared += x * x + y * y;
  }
  return { a: along / squared, b: across / squared, localCentre, gridCentre };
}

const centreOf = (points: readonly EastNorth[]): EastNorth => ({
  east: points.reduce((sum, point) => sum + point.east, 0) / points.length,
  north: points.reduce((sum, point) => sum + point.north, 0) / points.length,
});

const residualsOf = (grid: LocalGrid, points: readonly CommonPoint[]): EastNorth[] =>
  points.map((point) => {
    const computed = gridFromLocal(grid, point.local);
    return { east: computed.east - point.grid.east, north: computed.north - point.grid.north };
  });

const sumOfSquares = (residuals: readonly EastNorth[]): number =>
  residuals.reduce((sum, residual) => sum + residual.east ** 2 + residual.north ** 2, 0);

const misfitOf = (points: readonly CommonPoint[]): number =>
  Math.sqrt(sumOfSquares(residualsOf(bestGrid(points), points)));

function findingsOf(
  points: readonly CommonPoint[],
  grid: LocalGrid,
  residuals: readonly EastNorth[],
  limits: FitLimits,
  place: Place,
): Issue[] {
  const findings: Issue[] = [];
  const sizes = residuals.map((residual) => Math.hypot(residual.east, residual.north));
  const worst = sizes.reduce((best, size, index) => (size > (sizes[best] ?? 0) ? index : best), 0);
  if (!((sizes[worst] ?? Number.NaN) <= limits.residualM)) {
    findings.push(
      geodesyIssue(
        "geodesy.local-grid-residual",
        {
          point: points[worst]?.name ?? "",
          found: (sizes[worst] ?? Number.NaN).toFixed(3),
          expected: limits.residualM,
        },
        place,
        "warning",
      ),
    );
    findings.push(...mistakesOf(points, Math.sqrt(sumOfSquares(residuals)), place));
  }
  const { scale } = limits;
  if (scale !== undefined && !(Math.abs(localGridScale(grid) - scale.expected) <= scale.largestDifference))
    findings.push(
      geodesyIssue(
        "geodesy.local-grid-scale",
        { found: localGridScale(grid).toFixed(6), expected: scale.expected },
        place,
        "warning",
      ),
    );
  return findings;
}

/** The one mistake that explains a bad fit, if one does so clearly. */
function mistakesOf(points: readonly CommonPoint[], misfit: number, place: Place): Issue[] {
  const mirrored = points.map((point) => ({
    ...point,
    local: { east: -point.local.east, north: point.local.north },
  }));
  const exchanges = points.flatMap((first, i) =>
    points.slice(i + 1).map((second) => ({
      names: { first: first.name, second: second.name },
      misfit: misfitOf(
        points.map((point) => {
          if (point === first) return { ...point, grid: second.grid };
          return point === second ? { ...point, grid: first.grid } : point;
        }),
      ),
    })),
  );
  const exchange = exchanges.reduce((best, one) => (one.misfit < best.misfit ? one : best));
  const reversedMisfit = misfitOf(mirrored);
  if (Math.min(exchange.misfit, reversedMisfit) * CLEARLY_BETTER > misfit) return [];
  return reversedMisfit < exchange.misfit
    ? [geodesyIssue("geodesy.local-grid-reversed", {}, place)]
    : [geodesyIssue("geodesy.local-grid-exchanged", exchange.names, place)];
}
