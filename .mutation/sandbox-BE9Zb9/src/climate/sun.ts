/** The sun over a place: FAO-56 (Allen and others 1998), chapter 3. Latitude: degrees, south below 0. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { indexInYear } from "./year-ring.js";

// As in FAO-56 eqs. 23 and 24.
const yearAngleRad = (d: Day): number => (2 * Math.PI * (indexInYear(d) + 1)) / 365;

// FAO-56 eq. 23.
export function inverseRelativeDistance(d: Day): number {
  return 1 + 0.033 * Math.cos(yearAngleRad(d));
}

// FAO-56 eq. 24.
export function declinationRad(d: Day): number {
  return 0.409 * Math.sin(yearAngleRad(d) - 1.39);
}

// FAO-56 eq. 25; 0 where the sun does not rise, pi where it does not set.
export function sunsetAngleRad(d: Day, latitudeDeg: number): number {
  const cosine = -Math.tan(radians(latitudeDeg)) * Math.tan(declinationRad(d));
  return Math.acos(Math.max(-1, Math.min(1, cosine)));
}

// FAO-56 eq. 21, MJ/m2/day at the top of the air.
export function extraterrestrialMjM2(d: Day, latitudeDeg: number): number {
  const solarConstantMjM2Min = 0.082;
  const [latitude, declination] = [radians(latitudeDeg), declinationRad(d)];
  const sunset = sunsetAngleRad(d, latitudeDeg);
  return (
    ((24 * 60) / Math.PI) *
    solarConstantMjM2Min *
    inverseRelativeDistance(d) *
    (sunset * Math.sin(latitude) * Math.sin(declination) +
      Math.cos(latitude) * Math.cos(declination) * Math.sin(sunset))
  );
}

/** Hours from sunrise to sunset, 0 to 24: FAO-56 eq. 34, twilight not counted. */
export function dayLengthH(d: Day, latitudeDeg: number): number {
  return (24 / Math.PI) * sunsetAngleRad(d, latitudeDeg);
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
