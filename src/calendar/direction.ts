/** A direction or place in space, in any right-handed frame and any unit of length. */
export type Vector3 = readonly [x: number, y: number, z: number];

function dot(a: Vector3, b: Vector3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function cross(a: Vector3, b: Vector3): Vector3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** The part of `direction` that lies in the sky at right angles to the line of sight `at`, a unit vector. */
function projectOnSky(direction: Vector3, at: Vector3): Vector3 {
  const along = dot(direction, at);
  return [direction[0] - along * at[0], direction[1] - along * at[1], direction[2] - along * at[2]];
}

/** An angle brought into 0 (included) to 360 (left out) degrees. */
export function normaliseDegrees(degrees: number): number {
  const turned = degrees - 360 * Math.floor(degrees / 360);
  // A tiny negative angle comes out as 360 exactly.
  return turned >= 360 ? 0 : turned;
}

/**
 * The turn, at a point of the sky, from the direction of one thing to the direction of another: degrees
 * counter-clockwise as an observer at the origin sees it, 0 to 360. With the celestial pole as `from` this is
 * the position angle of astronomy (north through east).
 * @param at Where in the sky the turn is measured; any length but 0.
 * @param from What the turn is counted from.
 * @param to What the turn leads to. Where `from` or `to` lies exactly at `at`, or opposite, the turn is 0.
 */
export function computeTurnDegrees(at: Vector3, from: Vector3, to: Vector3): number {
  const length = Math.sqrt(dot(at, at));
  const sight: Vector3 = [at[0] / length, at[1] / length, at[2] / length];
  const start = projectOnSky(from, sight);
  const end = projectOnSky(to, sight);
  // Seen from inside the sphere, counter-clockwise is right-handed about the axis that points at the observer.
  const turnRadians = Math.atan2(-dot(cross(start, end), sight), dot(start, end));
  return normaliseDegrees((turnRadians * 180) / Math.PI);
}
