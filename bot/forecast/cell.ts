/**
 * The cell of the map a place lies in: neighbours share a forecast, and no finer place is ever sent.
 *
 * @packageDocumentation
 */
import type { GroundPlace } from "../../commands/context.ts";
import { CELL_DEG } from "../../config/forecast-services.ts";

export type Cell = {
  /** Latitude and longitude of the middle, as sent: `54.5,-2.6`. */
  readonly key: string;
  readonly latitude: string;
  readonly longitude: string;
};

const PER_DEGREE = Math.round(1 / CELL_DEG);

/** The cell that holds a place. */
export function cellOf(place: Pick<GroundPlace, "latitudeDeg" | "longitudeDeg">): Cell {
  const latitude = tenth(Math.min(90, Math.max(-90, place.latitudeDeg)));
  const east = tenth(place.longitudeDeg);
  const longitude = east === "-180.0" ? "180.0" : east;
  return { key: `${latitude},${longitude}`, latitude, longitude };
}

function tenth(degrees: number): string {
  const rounded = Math.round(degrees * PER_DEGREE) / PER_DEGREE;
  return (Object.is(rounded, -0) ? 0 : rounded).toFixed(1);
}

/** Each cell once, in the order first met. */
export function cellsOf(
  places: readonly Pick<GroundPlace, "latitudeDeg" | "longitudeDeg">[],
): readonly Cell[] {
  const byKey = new Map<string, Cell>();
  for (const place of places) {
    const cell = cellOf(place);
    if (!byKey.has(cell.key)) byKey.set(cell.key, cell);
  }
  return [...byKey.values()];
}
