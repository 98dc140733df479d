/**
 * A point or direction in the leader's space, in drawing units: x to the right as the class sees it, from the middle
 * of the body; y downwards from the top of the box; z out of the picture, from the shoulders towards the class.
 */
export type Vector = readonly [x: number, y: number, z: number];

/** Adds `share` times a second vector to a first one. */
export function add(one: Vector, other: Vector, share = 1): Vector {
  return [one[0] + share * other[0], one[1] + share * other[1], one[2] + share * other[2]];
}

/** Gives the vector from one point to another. */
export function subtract(to: Vector, from: Vector): Vector {
  return [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
}

/** Gives the vector times a number. */
export function scale(vector: Vector, share: number): Vector {
  return [share * vector[0], share * vector[1], share * vector[2]];
}

/** Gives the inner product. */
export function dot(one: Vector, other: Vector): number {
  return one[0] * other[0] + one[1] * other[1] + one[2] * other[2];
}

/** Gives the outer product, by the formula for axes of which y points upwards: here it points to the other side. */
export function cross(one: Vector, other: Vector): Vector {
  return [
    one[1] * other[2] - one[2] * other[1],
    one[2] * other[0] - one[0] * other[2],
    one[0] * other[1] - one[1] * other[0],
  ];
}

/** Gives the length. */
export function lengthOf(vector: Vector): number {
  return Math.sqrt(dot(vector, vector));
}

/** Gives the vector of length 1 in the same direction; a vector without length stays as it is. */
export function unit(vector: Vector): Vector {
  const length = lengthOf(vector);
  return length === 0 ? vector : scale(vector, 1 / length);
}

/** Gives the part of a vector that stands across a direction of length 1. */
export function across(vector: Vector, direction: Vector): Vector {
  return add(vector, direction, -dot(vector, direction));
}

/** Turns a vector about an axis of length 1, from `cross(axis, vector)`'s side, by an angle in radians. */
export function turnAbout(vector: Vector, axis: Vector, angle: number): Vector {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return add(add(scale(vector, cos), cross(axis, vector), sin), axis, dot(axis, vector) * (1 - cos));
}
