/** A station of a well survey as the weights of the error model need it. Angles in radians. */
export interface WeightStation {
  readonly depthM: number;
  readonly verticalM: number;
  readonly inclinationRad: number;
  readonly magneticAzimuthRad: number;
  readonly toolfaceRad: number;
}

export interface MagneticField {
  readonly gravityMS2: number;
  readonly fluxNT: number;
  readonly dipRad: number;
}

/** What one unit of a source does to depth (metres), inclination and azimuth (radians) of a station. */
export interface Weight {
  readonly depth: number;
  readonly inclination: number;
  readonly azimuth: number;
}

/** Weights of the basic set of SPE-67616, by code (from memory). A source in degrees is taken in radians. */
export function weightOf(code: string, station: WeightStation, field: MagneticField): Weight {
  const { depthM, verticalM, inclinationRad, magneticAzimuthRad, toolfaceRad } = station;
  const { gravityMS2: g, fluxNT, dipRad } = field;
  const [sI, cI] = [Math.sin(inclinationRad), Math.cos(inclinationRad)];
  const [sA, cA] = [Math.sin(magneticAzimuthRad), Math.cos(magneticAzimuthRad)];
  const [sT, cT] = [Math.sin(toolfaceRad), Math.cos(toolfaceRad)];
  const tanDip = Math.tan(dipRad);
  const horizontalNT = fluxNT * Math.cos(dipRad);
  const onX = cI * sA * sT - cA * cT;
  const onY = cI * sA * cT + cA * sT;
  const angles = (inclination: number, azimuth: number): Weight => ({ depth: 0, inclination, azimuth });
  switch (code) {
    case "DREF-R":
      return { depth: 1, inclination: 0, azimuth: 0 };
    case "DSF":
      return { depth: depthM, inclination: 0, azimuth: 0 };
    case "DST":
      return { depth: depthM * verticalM, inclination: 0, azimuth: 0 };
    case "ABX":
      return angles((-cI * sT) / g, (onX * tanDip + (cI / sI) * cT) / g);
    case "ABY":
      return angles((-cI * cT) / g, (onY * tanDip - (cI / sI) * sT) / g);
    case "ABZ":
      return angles(-sI / g, (tanDip * sI * sA) / g);
    case "ASX":
      return angles(sI * cI * sT * sT, -(tanDip * sI * onX + cI * cT) * sT);
    case "ASY":
      return angles(sI * cI * cT * cT, -(tanDip * sI * onY - cI * sT) * cT);
    case "ASZ":
      return angles(-sI * cI, tanDip * sI * cI * sA);
    case "MBX":
      return angles(0, (cA * cT - cI * sA * sT) / horizontalNT);
    case "MBY":
      return angles(0, -(cA * sT + cI * sA * cT) / horizontalNT);
    case "MBZ":
      return angles(0, (-sI * sA) / horizontalNT);
    case "MSX":
      return angles(0, (cI * cA * sT - tanDip * sI * sT + sA * cT) * (cA * cT - cI * sA * sT));
    case "MSY":
      return angles(0, -(cI * cA * cT - tanDip * sI * cT - sA * sT) * (cA * sT + cI * sA * cT));
    case "MSZ":
      return angles(0, -(sI * cA + tanDip * cI) * sI * sA);
    case "DECG":
    case "AMIC":
      return angles(0, 1);
    case "DBHG":
      return angles(0, 1 / horizontalNT);
    case "AMID":
      return angles(0, sI * sA);
    case "SAG":
      return angles(sI, 0);
    case "MX":
      return angles(sT, -cT / sI);
    case "MY":
      return angles(cT, sT / sI);
    default:
      throw new Error(`no weights for ${code}`);
  }
}
