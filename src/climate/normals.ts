/** The table of monthly means of the world, and the point of it that lies nearest. */

/** Whole numbers, one of each point. */
export type Column = Int16Array;

/** The table of monthly means: points of the world, one element of each column a point; `loadNormals` reads it. */
export interface Normals {
  readonly names: readonly string[];
  /** Hundredths of a degree, south is negative. */
  readonly latitudes: Column;
  /** Hundredths of a degree, west is negative. */
  readonly longitudes: Column;
  readonly heightsM: Column;
  /** Tenths of a degC, to be added to maxima and minima. */
  readonly warmings: Column;
  /** Of each month, January first, tenths of a degC. */
  readonly maxima: readonly Column[];
  readonly minima: readonly Column[];
  /** Of each month, mm. */
  readonly rains: readonly Column[];
  readonly about: NormalsAbout;
}

/** What the table's data file tells of it. */
export interface NormalsAbout {
  /** What the means are of, in a few words. */
  readonly means: string;
  readonly values: {
    /** Root mean square, degC. */
    readonly error_c: Sourced;
    /** degC. */
    readonly lapse_c_per_m: Sourced;
    readonly far_km: Sourced;
    readonly far_height_m: Sourced;
  };
}

interface Sourced {
  readonly value: number;
}

export interface NearestPoint {
  /** Its place in the columns. */
  readonly index: number;
  readonly distanceKm: number;
}

// IUGG 1980, mean radius of the earth.
const earthKm = 6371.0088;

/**
 * By great circle, so right across the date line and at the poles; the first of several. Where the
 * height is known, a point as much higher or lower as is far counts as one that lies as far away:
 * the valley's next town says more of a garden than the summit above it.
 */
export function nearestPoint(
  { latitudes, longitudes, heightsM, about: { values } }: Normals,
  latitudeDeg: number,
  longitudeDeg: number,
  elevationM?: number,
): NearestPoint {
  const latitude = radians(latitudeDeg);
  const [cosine, longitude] = [Math.cos(latitude), radians(longitudeDeg)];
  const kmPerM = values.far_km.value / values.far_height_m.value;
  let nearest: NearestPoint = { index: 0, distanceKm: Infinity };
  let least = Infinity;
  latitudes.forEach((hundredths, i) => {
    const north = radians(hundredths / 100) - latitude;
    if (Math.abs(north) * earthKm > least) return;
    const east = radians((longitudes[i] ?? 0) / 100) - longitude;
    // Haversine: it keeps its precision where two points lie close together.
    const haversine =
      Math.sin(north / 2) ** 2 + cosine * Math.cos(latitude + north) * Math.sin(east / 2) ** 2;
    const distanceKm = 2 * earthKm * Math.asin(Math.min(1, Math.sqrt(haversine)));
    const higherM = elevationM === undefined ? 0 : (heightsM[i] ?? 0) - elevationM;
    const away = distanceKm + kmPerM * Math.abs(higherM);
    if (away < least) [nearest, least] = [{ index: i, distanceKm }, away];
  });
  return nearest;
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
