/** A point of a plane, metres. */
export type PlanePoint = readonly [number, number];

/** A point this little outside counts as inside, metres: the last digits of site coordinates are of this size. */
const ROUNDING_M = 1e-8;

interface Circle {
  readonly centre: PlanePoint;
  readonly radius: number;
}

/**
 * Radius of the smallest circle that holds all points.
 *
 * @param points at least one. @returns metres; NaN if a coordinate is NaN.
 *
 * Frame: any plane. Source: Welzl, Smallest enclosing disks, 1991 (from memory), in its plain incremental form.
 */
export function smallestCircleRadius(points: readonly PlanePoint[]): number {
  if (!points.every(([x, y]) => Number.isFinite(x) && Number.isFinite(y))) return Number.NaN;
  let circle: Circle = { centre: points[0]!, radius: 0 };
  for (const [i, point] of points.entries())
    if (!holds(circle, point)) circle = circleThroughOne(points.slice(0, i), point);
  return circle.radius;
}

/** Smallest circle of the points that has `a` on its edge. */
function circleThroughOne(points: readonly PlanePoint[], a: PlanePoint): Circle {
  let circle: Circle = { centre: a, radius: 0 };
  for (const [i, point] of points.entries())
    if (!holds(circle, point)) circle = circleThroughTwo(points.slice(0, i), a, point);
  return circle;
}

/** Smallest circle of the points that has `a` and `b` on its edge. */
function circleThroughTwo(points: readonly PlanePoint[], a: PlanePoint, b: PlanePoint): Circle {
  let circle = circleOnDiameter(a, b);
  for (const point of points) if (!holds(circle, point)) circle = circleThroughThree(a, b, point);
  return circle;
}

function circleOnDiameter(a: PlanePoint, b: PlanePoint): Circle {
  return {
    centre: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
    radius: Math.hypot(b[0] - a[0], b[1] - a[1]) / 2,
  };
}

function circleThroughThree(a: PlanePoint, b: PlanePoint, c: PlanePoint): Circle {
  const [bx, by] = [b[0] - a[0], b[1] - a[1]];
  const [cx, cy] = [c[0] - a[0], c[1] - a[1]];
  const twiceArea = 2 * (bx * cy - by * cx);
  const [bb, cc] = [bx * bx + by * by, cx * cx + cy * cy];
  const x = (cy * bb - by * cc) / twiceArea;
  const y = (bx * cc - cx * bb) / twiceArea;
  // Three points on a line: the two that are farthest apart hold the third.
  if (!Number.isFinite(x) || !Number.isFinite(y))
    return [circleOnDiameter(a, b), circleOnDiameter(a, c), circleOnDiameter(b, c)].reduce((most, circle) =>
      circle.radius > most.radius ? circle : most,
    );
  return { centre: [a[0] + x, a[1] + y], radius: Math.hypot(x, y) };
}

function holds({ centre, radius }: Circle, [x, y]: PlanePoint): boolean {
  return Math.hypot(x - centre[0], y - centre[1]) <= radius + ROUNDING_M;
}
